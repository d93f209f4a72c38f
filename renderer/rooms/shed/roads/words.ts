import type { RoadsStatus } from '../../../../core/contract/index.ts';
import { ROAD_CLASSES, type RoadClass } from '../../../../core/roads/index.ts';
import { formatNumber } from '../../../format/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';

/** What a class of road is called for people. */
export const CLASS_WORDS: Readonly<Record<RoadClass, string>> = {
  motorway: roadsWords.classes.freeway,
  motorway_link: roadsWords.classes.freewayRamp,
  trunk: roadsWords.classes.highway,
  trunk_link: roadsWords.classes.highwayRamp,
  primary: roadsWords.classes.mainRoad,
  primary_link: roadsWords.classes.mainRoadRamp,
  secondary: roadsWords.classes.secondMainRoad,
  secondary_link: roadsWords.classes.secondMainRoadRamp,
  tertiary: roadsWords.classes.collectorStreet,
  tertiary_link: roadsWords.classes.collectorStreetRamp,
  unclassified: roadsWords.classes.minorRoad,
  residential: roadsWords.classes.residentialStreet,
  living_street: roadsWords.classes.sharedStreet,
  road: roadsWords.classes.unknown,
  service: roadsWords.classes.service,
  driveway: roadsWords.classes.driveway,
  parking_aisle: roadsWords.classes.parkingAisle,
  track: roadsWords.classes.track,
};

export function classWords(name: string): string {
  const known = ROAD_CLASSES.find((each) => each === name);
  return known === undefined ? name : CLASS_WORDS[known];
}

/** How much of the book's driving is by road, in a sentence. */
export function pairsWords({ byRoad, pairs, places }: RoadsStatus): string {
  const all = formatNumber(pairs);
  if (pairs === 0) return roadsWords.classes.noPairs;
  if (byRoad === pairs) return roadsWords.classes.allByRoad(all, formatNumber(places));
  if (byRoad === 0) return roadsWords.classes.allEstimated(all);
  const rest = formatNumber(pairs - byRoad);
  return roadsWords.classes.someByRoad(formatNumber(byRoad), all, rest);
}

/** A factor on times as people say it: 1.25 is 25 % slower. */
export function factorWords(timeFactor: number): string {
  const percent = Math.round((timeFactor - 1) * 100);
  if (percent === 0) return roadsWords.classes.asReckoned;
  return percent > 0 ? roadsWords.classes.takesLonger(percent) : roadsWords.classes.takesLess(-percent);
}
