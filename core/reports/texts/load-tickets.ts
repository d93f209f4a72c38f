/** Words of the load tickets. */
export const LOAD_TICKETS = {
  title: (rig: string) => `Load tickets: ${rig}`,
  noLoads: 'Nothing is filled on this day.',
  ticket: (number: number, all: number, what: string) => `Load ${number} of ${all}: ${what}`,
  overview: {
    load: 'Load',
    time: 'Time',
    where: 'Fill at',
    what: 'What goes in',
    covers: 'Covers',
    filled: (what: string, vessel: string) => `${what} into ${vessel}`,
    mix: 'Mix in all',
    water: 'Water in all',
    dry: 'Dry in all',
  },
  facts: {
    into: 'Into',
    fillAt: 'Fill at',
    covers: 'Must cover',
    withOverlap: 'With overlap',
    carrier: 'Carrier rate',
    putOut: 'Put out with',
    agitation: 'Agitation',
  },
  atTime: (time: string, where: string) => `${time}, ${where}`,
  yard: 'the yard, before leaving',
  fromBags: (place: string) => `${place}, from the bags on the machine`,
  fromRig: (place: string) => `the rig, at ${place}`,
  contents: { what: 'What goes in', rate: 'Rate', amount: 'Amount', smaller: 'That is' },
  stillInTank: 'Still in the tank',
  stillInHopper: 'Still in the hopper',
  water: 'Water',
  belowPump: 'Of it below the reach of the pump',
  tankSum: 'In the tank when filled',
  hopperSum: 'In the hopper when filled',
  bags: (count: number, weight: string) => `${count} ${count === 1 ? 'bag' : 'bags'} of ${weight}`,
  and: ' and ',
  covers: 'Ground it must cover',
  zoneFrom: (zone: string, area: string) => `${zone} from ${area} on`,
  onZones: (zones: readonly string[], area: string) => `${zones.join(', ')}: ${area}`,
  unknownGround: 'ground that the plan does not name',
  left: (why: string) =>
    `${why} What is left all the same goes onto ground that the label names, never above its rate.`.trim(),
  leftForNext: (amount: string, next: number) =>
    `${amount} is planned to be still in it when load ${next} goes on top.`,
  leftOver: (amount: string, advice: string) => `${amount} is planned to be left. ${advice}`.trim(),
  blanks: ['Mixed by', 'Time', 'Actually put in', 'Left at the end'],
} as const;

/** The order of mixing, and where it is from. */
export const MIXING = {
  title: 'Order of mixing where labels say nothing (Deveau and Cowbrough, OMAFA; 2021 North Dakota Weed Control Guide)',
  labels: 'Labels first: an order or a wait that a label asks for stands above this list.',
  half: (water: string, agitated: boolean) => `Half the water, ${water}${agitated ? ', agitation on' : ''}.`,
  product: (name: string, amount: string) => `${name}, ${amount}; let it disperse before the next.`,
  noProducts: 'No product is entered for this mix.',
  rest: (agitated: boolean) =>
    `The rest of the water${agitated ? '; keep agitating until the tank is empty' : ''}. Rinse measures into the tank.`,
} as const;

/** Whether a mix is stirred. */
export const AGITATION = {
  on: 'needed: on from half the water until the tank is empty',
  missing: 'needed, but none is entered for this tank: ask before mixing',
  notAsked: 'not asked for in the book; the label may ask for it',
} as const;

/** What the rate of a load rests on. */
export const CALIBRATION = {
  title: 'Calibration',
  at: (method: string, figures: readonly string[]) =>
    figures.length === 0 ? method : `${method}: ${figures.join(', ')}`,
  swath: (width: string) => `${width} swath`,
  pace: (minutes: string) => `${minutes} min for 1,000 ft²`,
  delivers: (rate: string) => `delivers ${rate}`,
  tip: (size: string) => `tip ${size}`,
  psi: (pressure: string) => `${pressure} psi`,
  apart: (spacing: string) => `tips ${spacing} apart`,
  on: (date: string) => `calibrated ${date}`,
  none: 'no calibration kept in the book: check it before the first load',
} as const;

/** What the book has of the labels. */
export const LABEL = {
  title: 'Labels, as entered in the book',
  registration: (text: string) => `registration ${text}`,
  noRegistration: 'no registration entered',
  most: (rate: string) => `at most ${rate}`,
  carrier: (least: string, most: string) => `carrier ${least} to ${most}`,
  carrierLeast: (least: string) => `carrier ${least} or more`,
  carrierMost: (most: string) => `carrier up to ${most}`,
  wind: (speed: string) => `wind up to ${speed}`,
  air: (least: string, most: string) => `air ${least} to ${most}`,
  airLeast: (least: string) => `air ${least} or warmer`,
  airMost: (most: string) => `air up to ${most}`,
  dry: (hours: string) => `${hours} h without rain after it`,
  noLimits: 'no limits entered: read the label itself',
  missing: 'not in the book: read the label itself',
} as const;
