import type { Book } from '../../core/book/index.ts';
import { book, SPRAY } from './books.ts';
import { type Street, streetLots } from './lots.ts';
import type { InventedRoads } from './roads.ts';
import { fillPoint, PUSH_SPREADER, REEL_200, rig, STAND_ON_35 } from './shed.ts';

/**
 * Both banks of an invented creek: the streets on either side lie 120 m apart, and the only bridge is 750 m to the east. Whoever
 * plans by straight lines goes to and fro across the water.
 */
const STREETS: readonly Street[] = [
  {
    name: 'Reed Street',
    from: [-90, -60],
    headingDeg: 0,
    right: ['narrow', 'middle', 'narrow', 'middle'],
    left: ['narrow', 'narrow', 'middle', 'narrow'],
  },
  {
    name: 'Osier Street',
    from: [-90, -190],
    headingDeg: 0,
    right: ['middle', 'narrow', 'middle'],
    left: ['narrow', 'middle', 'narrow'],
  },
  {
    name: 'Heron Street',
    from: [-90, 60],
    headingDeg: 0,
    right: ['narrow', 'narrow', 'middle', 'narrow'],
    left: ['middle', 'narrow', 'middle', 'narrow'],
  },
  {
    name: 'Kite Street',
    from: [-90, 190],
    headingDeg: 0,
    right: ['narrow', 'middle', 'narrow', 'narrow'],
    left: ['middle', 'narrow', 'middle'],
  },
];

export const CREEK_TOWN_ROADS: InventedRoads = {
  corners: {
    yard: { at: [-1500, -700] },
    'Quarry bend': { at: [-700, -600] },
    'Mill corner': { at: [-250, -190] },
    'Reed west': { at: [-250, -60] },
    'Reed east': { at: [150, -60] },
    'Osier east': { at: [150, -190] },
    'Bridge south': { at: [900, -125], tags: { highway: 'traffic_signals' } },
    'South fork': { at: [150, -125] },
    'Bridge north': { at: [900, 125] },
    'North fork': { at: [150, 125] },
    'Heron east': { at: [150, 60] },
    'Heron west': { at: [-250, 60] },
    'Kite east': { at: [150, 190] },
    'Kite west': { at: [-250, 190] },
    'Weir end': { at: [-400, 190] },
    'Osier end': { at: [-400, -190] },
    'Island one': { at: [560, 10] },
    'Island two': { at: [600, 10] },
  },
  roads: [
    {
      name: 'Quarry Road',
      through: ['yard', 'Quarry bend', 'Mill corner'],
      tags: { highway: 'secondary', maxspeed: '45 mph' },
    },
    { name: 'Osier Close', through: ['Osier end', 'Mill corner'], tags: { highway: 'residential' } },
    { name: 'Osier Street', through: ['Mill corner', 'Osier east'], tags: { highway: 'residential' } },
    { name: 'Mill Lane', through: ['Mill corner', 'Reed west'], tags: { highway: 'residential' } },
    { name: 'Reed Street', through: ['Reed west', 'Reed east'], tags: { highway: 'residential', oneway: 'yes' } },
    { name: 'South Avenue', through: ['South fork', 'Reed east'], tags: { highway: 'tertiary' } },
    { name: 'Osier Avenue', through: ['Osier east', 'South fork'], tags: { highway: 'tertiary' } },
    {
      name: 'South Bridge Road',
      through: ['South fork', 'Bridge south'],
      tags: { highway: 'secondary', maxspeed: '35 mph' },
    },
    {
      name: 'Creek Bridge',
      through: ['Bridge south', 'Bridge north'],
      tags: { highway: 'secondary', bridge: 'yes', maxspeed: '35 mph' },
    },
    {
      name: 'North Bridge Road',
      through: ['Bridge north', 'North fork'],
      tags: { highway: 'secondary', maxspeed: '35 mph' },
    },
    { name: 'North Avenue', through: ['Heron east', 'North fork', 'Kite east'], tags: { highway: 'tertiary' } },
    { name: 'Heron Street', through: ['Heron west', 'Heron east'], tags: { highway: 'residential' } },
    { name: 'Kite Street', through: ['Kite west', 'Kite east'], tags: { highway: 'residential' } },
    { name: 'Weir Lane', through: ['Heron west', 'Kite west', 'Weir end'], tags: { highway: 'residential' } },
    { name: 'Footbridge', through: ['Reed west', 'Heron west'], tags: { highway: 'footway', bridge: 'yes' } },
    { name: 'Island track', through: ['Island one', 'Island two'], tags: { highway: 'residential' } },
  ],
  turns: [],
};

/** One rig, 29 lawns on both banks, one day, with the roads of the place. */
export function creekTown(extract: NonNullable<NonNullable<Book['roads']>['extract']>): Book {
  return book({
    id: 'sample-creek-town',
    name: 'Creek Town, by road (invented)',
    properties: STREETS.flatMap((street) => streetLots(street)),
    machines: [STAND_ON_35],
    handMethods: [REEL_200, PUSH_SPREADER],
    rigs: [
      rig({
        id: 'rig-creek',
        name: 'Rig Creek',
        machines: [{ machineId: 'stand-on-35', ride: 'rack', unloadMin: 1, loadMin: 1 }],
        handMethodIds: ['reel-200', 'push-spreader'],
        shiftMin: 600,
        overtimeMin: 60,
        nurseTankGal: 120,
        payloadLb: 3600,
      }),
    ],
    fillPoints: [fillPoint({ id: 'shop', name: 'Yard on Quarry Road', what: 'shop' }, [-1500, -690])],
    treatments: [SPRAY],
    rounds: [
      {
        id: 'spring',
        name: 'Spring pre-emergent',
        treatmentIds: ['pre-emergent'],
        propertyIds: 'all',
        skipped: [],
        dates: ['2027-03-16'],
        dueDate: '2027-03-20',
        rigIds: ['rig-creek'],
        wetGround: false,
      },
    ],
    roads: {
      use: true,
      extract,
      speeds: [],
      mostFt: 1000,
      kerbSide: false,
      drivesOn: 'right',
      privateRoads: true,
      avoid: [],
      times: [],
    },
  });
}
