/** What a file holds that has no lawns. */
const HELD = { matrix: 'travel times', temperatures: 'temperatures', ground: 'no records' } as const;

/** Words of reading and writing files. */
export const filesWords = {
  backups: {
    restored: (when: string) => `The book is as it was on ${when}`,
  },
  files: {
    tooLarge: (mebibytes: number) => `The file has ${mebibytes} MiB; a browser hands over 64 at most.`,
    tooLargeAdvice: "Split it, or open it in the program's own window.",
    tooLargeBackground: 'Put it into the folder of backgrounds that the panel names.',
    written: (written: string) => `${written} is written`,
  },
  imports: {
    noText: 'The file came without its text.',
    noTextAdvice: 'Choose a CSV file.',
    step1: 'Step 1 of 3: what is in the file',
    step2: 'Step 2 of 3: what its fields mean',
    step3: 'Step 3 of 3: what would change',
    noLawns: (kind: 'matrix' | 'temperatures' | 'ground') => `There are no lawns in this file: it holds ${HELD[kind]}.`,
    noLawnsAdvice: 'Choose a table with a line for each lawn (CSV), or a file of outlines.',
    looked: (found: number, rejected: number) => `${found} records looked at, ${rejected} rejected`,
  },
  open: {
    newBook: 'New book',
  },
  temperatureImport: {
    dateColumn: 'which column has the date',
    temperatureColumns: 'which columns have temperatures',
    dateOrder: 'in which order the dates are written',
    airUnit: 'whether the air is in Fahrenheit or Celsius',
    soilUnit: 'whether the soil is in Fahrenheit or Celsius',
    station: 'which station is wanted',
    stationName: 'what the station is called',
  },
  weatherFile: {
    noRound: 'This is weather by the hour, which belongs to the calendar of a round, and the book has no round.',
    noRoundAdvice: 'Add a round in the Round room, then read the file again.',
  },
} as const;
