/** Words of the application records of a day and of the versions of one lawn. */
export const RECORDS = {
  title: (rig: string) => `Application records: ${rig}`,
  rules: {
    title: 'Which records you have to keep',
    heading: 'The rules that are named above',
    rule: 'Rule',
    about: 'For whom',
    source: 'Read in',
    items: [
      'Your own state, and the label, say what has to be written down, how soon, for how long, and who gets a copy. These elements are those of two federal rules on restricted-use products and of three states as examples.',
      'Nothing here was guessed. What is missing is named below each record with who asks for it.',
    ],
  },
  kept: (version: number, date: string, time: string, by: string) =>
    `Kept in the book: version ${version}, written ${date}, ${time}, by ${by}.`,
  because: (why: string) => ` Corrected because: ${why}.`,
  withdrawn: (why: string) => `WITHDRAWN: ${why}. What it said before:`,
  notKept: 'Not kept yet. Drawn up from the book and from what was written down of the visit.',
  planned: 'To be filled in: nothing is written down of this visit yet, so all figures are as planned.',
  onSite: '__________',
  skipped: (reason: string) => `Nothing was applied: the lawn was left out. ${reason}`,
  skippedWithoutReason: 'No reason is written down.',
  differs: (differences: string) =>
    `The book and the visit say something else by now: ${differences}. Write a corrected version where the record is wrong.`,
  difference: (what: string, before: string, after: string) => `${what} ${before} in the record, ${after} now`,
  nothing: 'nothing',
  ofProduct: (element: string, product: string) => (product === '' ? element : `${element} of ${product}`),
  product: (product: string, treatment: string) => `${product} (${treatment})`,
  asPlanned: (text: string) => `${text} (as planned)`,
  byHand: (text: string) => `${text} (typed in)`,
  missingValue: 'MISSING',
  noProduct: 'Nothing was put down.',
  missing: {
    title: 'Missing',
    item: (element: string, lacks: string) => `${element}: ${lacks}`,
    askedBy: (rules: string) => ` (asked for by ${rules})`,
  },
  blanks: [
    ['Came and left', 'Wind from, speed', 'Temperature, weather'],
    ['Applied by', 'Helpers', 'Actually used'],
  ],
  signature: ['Signature', 'Date'],
  noStops: 'The day has no stops, so there is nothing to record.',
} as const;

/** Words of the sheet of record versions. */
export const RECORD_HISTORY = {
  title: (lawn: string) => `Record versions: ${lawn}`,
  none: 'No application record of this lawn is kept in the book.',
  heading: (date: string, rig: string) => `${date}, ${rig}`,
  version: 'Version',
  written: 'Written',
  by: 'By',
  why: 'Why, and what changed',
  first: 'first version',
  withdrawn: (why: string) => `Withdrawn: ${why}`,
  sameWords: (why: string) => `${why} (it says the same)`,
  said: (version: number) => `Version ${version} says`,
  lasting: 'A version is never changed once it is written. A correction is a version of its own.',
  change: (what: string, before: string, after: string) => `${what}: ${before} is now ${after}`,
} as const;
