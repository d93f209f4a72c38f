import type { AreaGeometry } from '../book/index.ts';
import { byClass, ROAD_CLASSES, type RoadClass } from './classes.ts';

/** Seconds are multiplied by these; classes without one stay as they are. */
export type ClassFactors = Partial<Readonly<Record<RoadClass, number>>>;

/** What is driven and how quickly: everything about roads that a user may set. */
export type RoadSettings = {
  /** Speed of a truck with trailer on a road of the class where no limit is told, km/h. */
  readonly speedsKmh: Readonly<Record<RoadClass, number>>;
  /** Share of a told limit that is driven in the mean. */
  readonly shareOfLimit: number;
  /** No road is driven faster than this, km/h. */
  readonly mostKmh: number;
  /** Share of the speed that is driven on unpaved roads. */
  readonly shareUnpaved: number;
  readonly turns: TurnSeconds;
  readonly truck: TruckLimits;
  /** Which side traffic keeps to: decides which turns cross it, and on which side a truck stops. */
  readonly drivesOn: 'right' | 'left';
  /** Whether private roads may be used where a place lies on them. Never for passing through. */
  readonly privateRoads: 'ends' | 'no';
  /** Areas that are not driven through, but for places inside. */
  readonly avoid: readonly AreaGeometry[];
  /** Hours in which some classes take longer, such as school and rush; the first that fits counts. */
  readonly times: readonly TimeOfDay[];
};

/** Seconds lost at a right angle or sharper; bends up to 30 degrees are free, and between the two it rises evenly. */
export type TurnSeconds = {
  /** Towards the kerb, across no traffic. */
  readonly nearSec: number;
  /** Across the traffic that comes towards one. */
  readonly acrossSec: number;
  /** Turning round at a dead end. */
  readonly roundSec: number;
  /** Mean wait at a traffic signal. */
  readonly signalSec: number;
  /** Stopping for a gate that everybody may open. */
  readonly gateSec: number;
};

/** Zero and false where the limit does not matter. */
export type TruckLimits = {
  readonly heightM: number;
  readonly widthM: number;
  readonly weightKg: number;
  readonly trailer: boolean;
  /** Over 3.5 t by its papers: rules for heavy goods vehicles hold. */
  readonly heavy: boolean;
};

/** Hours in which driving takes longer, and by what factor on each class of road. */
export type TimeOfDay = {
  readonly name: string;
  /** Minutes after midnight, [from, to). */
  readonly fromMin: number;
  readonly toMin: number;
  readonly factors: ClassFactors;
};

/** The program's own figures (no source; see docs/methods/roads.md for how they compare). Users change them. */
export const ROAD_SETTINGS: RoadSettings = {
  speedsKmh: {
    motorway: 88,
    motorway_link: 48,
    trunk: 80,
    trunk_link: 44,
    primary: 60,
    primary_link: 36,
    secondary: 52,
    secondary_link: 32,
    tertiary: 42,
    tertiary_link: 28,
    unclassified: 30,
    residential: 28,
    living_street: 12,
    road: 24,
    service: 16,
    driveway: 10,
    parking_aisle: 10,
    track: 10,
  },
  shareOfLimit: 0.8,
  mostKmh: 105,
  shareUnpaved: 0.7,
  turns: { nearSec: 3, acrossSec: 6, roundSec: 25, signalSec: 4, gateSec: 20 },
  truck: { heightM: 0, widthM: 0, weightKg: 0, trailer: false, heavy: false },
  drivesOn: 'right',
  privateRoads: 'ends',
  avoid: [],
  times: [],
};

/** The factors of a time of day, minutes after midnight; none where no row fits. */
export function factorsAt(settings: RoadSettings, minute: number): ClassFactors {
  return settings.times.find((each) => minute >= each.fromMin && minute < each.toMin)?.factors ?? {};
}

/** Both factors at once, such as a learned one and that of the hour. */
export function joinFactors(one: ClassFactors, other: ClassFactors): ClassFactors {
  const left = byClass(one, 1);
  const right = byClass(other, 1);
  return Object.fromEntries(ROAD_CLASSES.map((name, at) => [name, (left[at] as number) * (right[at] as number)]));
}
