import { PAGE } from './page.ts';

/** Words of the map pages. */
export const MAP_PAGES = {
  title: (rig: string) => `Map pages: ${rig}`,
  facts: {
    stops: 'Stops',
    driving: 'Driving',
    leave: 'Leave',
    back: 'Back',
  },
  wholeWay: 'The whole way',
  straight: 'Lines go straight from place to place: they are no directions. Squares are fill points.',
  byRoad: (credit: string) =>
    `Lines follow the roads of the map beside the book (${credit}): they are no directions, and know of no road works. Squares are fill points.`,
  partlyByRoad: (credit: string) =>
    `Lines follow the roads of the map beside the book (${credit}) where it has a way, and go straight elsewhere: they are no directions. Squares are fill points.`,
  stops: 'The stops',
  order: 'Places in order',
  columns: { number: '', time: 'Time', place: 'Place', address: 'Address' },
  noStops: 'This day has no stops, so there is no way and no lawn to draw.',
  noPlace: 'The book no longer has a place for any stop of this day.',
  stop: (number: number, name: string, by: string, time: string) =>
    [PAGE.stop(number, name), by, time].filter((each) => each !== '').join(' · '),
  times: (from: string, to: string) => `${from} to ${to}`,
  byHand: (by: string, zones: string) => `By hand, ${by}: ${zones}.`,
  unknown: 'No passes could be laid here.',
  notDriven: (head: string) => `The book does not say how ${head} is driven, so no passes are drawn.`,
  notLaid: 'Passes are not laid yet.',
  noOutline: (zones: string) => `Without an outline on the map: ${zones}.`,
  zones: {
    zone: 'Zone',
    work: 'Work',
    trim: 'Trim',
    swaths: 'Swaths',
    direction: 'Direction',
    minutes: 'Min',
    byHand: 'Not reached',
  },
  fillPoint: 'F',
  background: (names: string) => `Background: ${names} (the book's own picture, laid by points).`,
} as const;

/** What lines and patterns of a map mean. */
export const MAP_LEGEND = {
  trim: 'trim pass',
  swath: 'swath',
  transit: 'nothing comes out',
  twice: 'gone over twice',
  missed: 'not reached',
  turf: 'treated',
  parking: 'the rig parks',
} as const;
