import { counted } from '../../format/index.ts';

/** Words of the stops and loads of a day. */
export const stopsWords = {
  passes: {
    noneReckoned: 'Nothing at this stop is reckoned from passes.',
  },
  inspector: {
    noStopSelected: 'No stop selected',
    noStopAdvice: 'Choose a stop in the list, on the map or on the ribbon.',
    stop: (number: number) => `Stop ${number}`,
    onSite: (from: string, until: string, stay: string, drive: string) =>
      `${from} to ${until}, ${stay} on site after ${drive} of driving`,
    mind: (what: string) => `Watch for: ${what}`,
    doneHere: 'Done here',
    handTrim: ', hand trim',
    secondPerson: ', second person',
    fromCapacity: (spent: string, efficiency: string) => `${spent}; from field capacity, efficiency ${efficiency}`,
    covered: (spent: string, area: string, overlap: string, average: string, worst: number) =>
      `${spent}; ${area} covered, ${overlap} overlap; ${average} × the rate on average, ${worst} × at most`,
    leftUntreated: (area: string) => `${area} not reached by the machine, left untreated`,
    doneAnotherWay: 'Done another way',
  },
  stops: {
    listLabel: (rig: string) => `Stops and refills of ${rig}`,
    withMore: 'With a little more',
    date: 'Date',
    rig: 'Rig',
    loads: (loads: number) => counted(loads, 'load'),
    restOfDay: (clock: string) => `The rest of the day, from ${clock}.`,
    homeAndDone: (home: string, done: string, distance: string) => `home ${home}, done ${done} · ${distance}`,
    ofOvertime: (duration: string) => `${duration} of overtime`,
    afterArea: (area: string) => `after ${area}: `,
    atPlace: (place: string) => ` at ${place}`,
    fromBags: (fills: string) => `${fills} from bags on the machine`,
  },
  loads: {
    loads: 'Loads',
    loadNumber: (number: number) => `Load ${number}`,
    filled: 'filled',
    stillBefore: 'still in it before',
    covers: 'covers',
    leftInEnd: 'left in the end',
    carriesInMorning: 'carries in the morning',
    mayCarry: 'may carry',
    leftInEvening: (what: string) => `Left in the evening: ${what}.`,
    invented: 'Invented book: products and rates are not for use.',
  },
} as const;
