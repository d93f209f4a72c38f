import type { RoadsStatus } from '../../../../core/contract/index.ts';
import { ROAD_CLASSES, type RoadClass } from '../../../../core/roads/index.ts';

/** What a class of road is called for people. */
export const CLASS_WORDS: Readonly<Record<RoadClass, string>> = {
  motorway: 'freeway',
  motorway_link: 'freeway ramp',
  trunk: 'highway',
  trunk_link: 'highway ramp',
  primary: 'main road',
  primary_link: 'main road, ramp',
  secondary: 'second main road',
  secondary_link: 'second main road, ramp',
  tertiary: 'collector street',
  tertiary_link: 'collector street, ramp',
  unclassified: 'minor road',
  residential: 'residential street',
  living_street: 'shared street',
  road: 'road of unknown kind',
  service: 'service road, alley',
  driveway: 'driveway',
  parking_aisle: 'aisle of a car park',
  track: 'track',
};

export function classWords(name: string): string {
  const known = ROAD_CLASSES.find((each) => each === name);
  return known === undefined ? name : CLASS_WORDS[known];
}

/** How much of the book's driving is by road, in a sentence. */
export function pairsWords({ byRoad, pairs, places }: RoadsStatus): string {
  const all = pairs.toLocaleString('en-US');
  if (pairs === 0) return 'There are no two places to drive between yet.';
  if (byRoad === pairs) return `All ${all} ways between ${places.toLocaleString('en-US')} places are by road.`;
  if (byRoad === 0) return `All ${all} ways between places are an estimate from straight lines.`;
  const rest = (pairs - byRoad).toLocaleString('en-US');
  return `${byRoad.toLocaleString('en-US')} of ${all} ways between places are by road; ${rest} are an estimate from straight lines.`;
}

/** A factor on times as people say it: 1.25 is 25 % slower. */
export function factorWords(timeFactor: number): string {
  const percent = Math.round((timeFactor - 1) * 100);
  if (percent === 0) return 'as reckoned';
  return percent > 0 ? `takes ${percent} % longer` : `takes ${-percent} % less`;
}
