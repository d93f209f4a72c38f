import { DIFFERENCE_WORDS } from '../../compare/index.ts';

/** Words of the sheets of the office: two fleets, calibrations, a season. */
export const FLEETS = {
  title: (round: string) => `Fleet comparison: ${round}`,
  none: 'There are no two fleets with a plan of this round. Add them in the Round room under Fleets, and plan both.',
  heading: (first: string, second: string) => `${first} against ${second}`,
  differs: (first: string, one: number, second: string, other: number) =>
    `The two do not do the same work: ${first} leaves out ${one}, ${second} ${other}. What that is worth is not in the cost.`,
  forRound: 'For this round',
  difference: 'Difference',
  same: 'the same',
  less: (figure: string) => `${figure} less`,
  more: (figure: string) => `${figure} more`,
  rows: DIFFERENCE_WORDS,
  lastDate: 'last day of work',
  times: {
    treating: 'hours treating',
    driving: 'hours driving',
    refilling: 'hours refilling',
    'at stops': 'hours setting up',
    'at the shop': 'hours at the shop',
    waiting: 'hours waiting, breaks',
  },
  fixed: 'fixed cost a season',
  leftOut: (fleet: string) => `${fleet} leaves out`,
  item: (lawn: string, why: string) => `${lawn}: ${why}`,
  rule: 'The same lawns, days, hours and prices. Both plans come from a search that was given so much time; another run may find a little more for either. Labels and local rules stand above both.',
} as const;

/** Words of the calibration record. */
export const CALIBRATIONS = {
  title: 'Calibration record',
  none: 'No calibration is kept in the book yet. Make one on the bench of the Shed and keep it.',
  head: (machine: string, head: string) => `${machine}, ${head}`,
  delivered: 'Delivers',
  notDelivered: 'no delivered rate',
  due: 'Next one',
  neverDue: 'no interval is set',
  dueAfter: (left: number) => (left > 0 ? `due after ${left} more days of use` : 'DUE NOW'),
  date: 'Date',
  what: 'What',
  by: 'By',
  setting: 'Setting',
  found: 'Found',
  given: (figures: string) => `From ${figures}`,
  figure: (name: string, value: string) => `${name} ${value}`,
  source: (source: string) => `Formula: ${source}`,
} as const;

/** Words of the season ledger. */
export const SEASON = {
  title: (year: string) => `Season ledger ${year}`,
  rule: 'What was recorded counts as it was written down; what rounds have planned counts until it is recorded. Limits are those that were entered from labels and local rules: the program has none of its own.',
  totals: { title: 'On all lawns', what: 'What', kind: 'Kind', amount: 'In all' },
  kinds: { product: 'product', active: 'active ingredient', nutrient: 'nutrient' },
  printed: (nutrient: string) => `${nutrient}, as printed`,
  limits: {
    title: 'Lawns and their limits',
    lawn: 'Lawn',
    zone: 'Zone',
    limit: 'Limit',
    used: 'Used',
    most: 'Allowed',
    share: 'Share',
    over: 'OVER',
    none: 'No lawn touches a limit, or none is entered.',
    year: (name: string) => `${name}, a year`,
    once: (name: string) => `${name}, at once`,
  },
  applications: {
    title: 'What went and will go down',
    lawn: 'Lawn',
    zone: 'Zone',
    when: 'When',
    what: 'Treatment',
    ground: 'Ground',
    down: 'Put down',
    planned: (when: string) => `${when}, planned`,
    span: (first: string, last: string) => `${first} to ${last}`,
    notKnown: 'not known',
    none: 'Nothing is recorded or planned in this year.',
  },
  gaps: 'Not counted',
} as const;
