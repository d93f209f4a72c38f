import { classNumber, ROAD_CLASSES, type RoadClass } from '../classes.ts';
import { ACCESS, EDGE } from '../types.ts';
import { admissionOf } from './access.ts';
import type { Tags } from './elements.ts';
import { readLengthCm, readSpeed, readWeight } from './figures.ts';

/** What the tags of a way make of all its edges. */
export type RoadTags = {
  readonly roadClass: number;
  /** Bits of EDGE. */
  readonly flags: number;
  readonly access: number;
  readonly heavyAccess: number;
  readonly maxForwardKmh: number;
  readonly maxBackwardKmh: number;
  readonly heightCm: number;
  readonly widthCm: number;
  readonly weight100Kg: number;
};

/** Kinds of `service` that are classes of their own; `null` for those that no truck uses. */
const SERVICES: Readonly<Record<string, RoadClass | null>> = {
  driveway: 'driveway',
  parking_aisle: 'parking_aisle',
  'drive-through': 'parking_aisle',
  emergency_access: null,
};

/** Classes that are used by those alone who have business there, where no tag says otherwise: nobody passes through. */
const FOR_ENDS: readonly RoadClass[] = ['driveway', 'track'];

const UNPAVED: readonly string[] = [
  'unpaved',
  'gravel',
  'fine_gravel',
  'pebblestone',
  'dirt',
  'earth',
  'ground',
  'grass',
  'sand',
  'mud',
  'rock',
];

/** The road that a way is; null where no truck drives on it. */
export function roadOf(tags: Tags): RoadTags | null {
  const roadClass = classOf(tags);
  if (roadClass === null || tags.get('area') === 'yes') return null;
  const directions = directionsOf(tags, roadClass);
  if (directions === 0) return null;
  const usual = FOR_ENDS.includes(roadClass) ? ACCESS.ends : ACCESS.open;
  const told = admissionOf(tags);
  const access = told.car ?? usual;
  const heavyAccess = told.heavy ?? usual;
  if (access === ACCESS.closed && heavyAccess === ACCESS.closed) return null;
  const speed = readSpeed(tags.get('maxspeed'));
  const isUnpaved = UNPAVED.includes(tags.get('surface') ?? '');
  const isRound = isRoundabout(tags);
  return {
    roadClass: classNumber(roadClass),
    flags:
      directions |
      (tags.get('trailer') === 'no' ? EDGE.noTrailer : 0) |
      (isRound ? EDGE.roundabout : 0) |
      (isUnpaved ? EDGE.unpaved : 0),
    access,
    heavyAccess,
    maxForwardKmh: readSpeed(tags.get('maxspeed:forward')) || speed,
    maxBackwardKmh: readSpeed(tags.get('maxspeed:backward')) || speed,
    heightCm: readLengthCm(tags.get('maxheight')),
    widthCm: readLengthCm(tags.get('maxwidth')),
    weight100Kg: smallest(readWeight(tags.get('maxweight')), readWeight(tags.get('maxgcweight'))),
  };
}

const CLASS_NAMES: ReadonlySet<string> = new Set(ROAD_CLASSES);
/** Classes that come from `service` and are no values of `highway`. */
const BY_SERVICE: readonly string[] = ['driveway', 'parking_aisle'];

function classOf(tags: Tags): RoadClass | null {
  const highway = tags.get('highway') ?? '';
  if (!CLASS_NAMES.has(highway) || BY_SERVICE.includes(highway)) return null;
  if (highway !== 'service') return highway as RoadClass;
  const service = tags.get('service') ?? '';
  return Object.hasOwn(SERVICES, service) ? (SERVICES[service] ?? null) : 'service';
}

function isRoundabout(tags: Tags): boolean {
  const junction = tags.get('junction');
  return junction === 'roundabout' || junction === 'circular';
}

/**
 * Bits of EDGE for the directions that traffic takes; 0 where they change with the hour. Roundabouts and motorways are one-way
 * unless told otherwise (OpenStreetMap wiki, "Key:oneway").
 */
function directionsOf(tags: Tags, roadClass: RoadClass): number {
  const both = EDGE.forward | EDGE.backward;
  switch (tags.get('oneway:motor_vehicle') ?? tags.get('oneway')) {
    case 'yes':
    case 'true':
    case '1':
      return EDGE.forward;
    case '-1':
    case 'reverse':
      return EDGE.backward;
    case 'no':
    case 'false':
    case '0':
    case 'alternating':
      return both;
    case 'reversible':
      return 0;
    default:
      return isRoundabout(tags) || roadClass === 'motorway' ? EDGE.forward : both;
  }
}

function smallest(one: number, other: number): number {
  return one === 0 || other === 0 ? Math.max(one, other) : Math.min(one, other);
}
