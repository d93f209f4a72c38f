/** What stands on pages of every sheet. */
export const PAGE = {
  /** On every sheet and page made of invented data. */
  invented: 'Invented data, not for use',
  program: 'Swardway',
  /** A stop by its number in the day: many names begin with a number of their own. */
  stop: (number: number, name: string) => `${number}. ${name}`,
  map: 'Map',
} as const;

/** Why a paper size is refused. */
export const PAPER = {
  place: 'paper size',
  unknown: (text: string) => `"${text}" is no paper that sheets are made for.`,
  choose: (known: readonly string[]) => `Choose ${known.join(' or ')}.`,
} as const;
