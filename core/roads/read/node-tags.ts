import { ACCESS, JUNCTION } from '../types.ts';
import { admissionOf } from './access.ts';
import type { Tags } from './elements.ts';
import { readLengthCm } from './figures.ts';

/** What stands at a node of a road. */
export type NodeTags = {
  /** Bits of JUNCTION. */
  readonly flags: number;
  readonly heightCm: number;
  /** Direction of the way for which a signal between junctions counts. */
  readonly signal: 'none' | 'both' | 'forward' | 'backward';
};

/** Barriers that stop nobody (OpenStreetMap wiki, "Key:barrier"). */
const OPEN_BARRIERS: readonly string[] = [
  'no',
  'entrance',
  'toll_booth',
  'border_control',
  'cattle_grid',
  'height_restrictor',
  'kerb',
];
/** Barriers that are opened, where nothing says for whom. */
const GATES: readonly string[] = ['gate', 'lift_gate', 'swing_gate', 'sliding_gate', 'sally_port'];

/** What stands at the node; null where it does not matter. */
export function standingAt(tags: Tags): NodeTags | null {
  const isSignal = tags.get('highway') === 'traffic_signals';
  const barrier = tags.get('barrier');
  const heightCm = readLengthCm(tags.get('maxheight'));
  const closing = barrier === undefined ? 0 : barrierFlag(barrier, tags);
  if (!isSignal && closing === 0 && heightCm === 0) return null;
  const direction = tags.get('traffic_signals:direction');
  const oneWay = direction === 'forward' || direction === 'backward' ? direction : 'both';
  return { flags: (isSignal ? JUNCTION.signal : 0) | closing, heightCm, signal: isSignal ? oneWay : 'none' };
}

function barrierFlag(barrier: string, tags: Tags): number {
  switch (admissionOf(tags).car) {
    case ACCESS.open:
      return 0;
    case ACCESS.ends:
    case ACCESS.private:
      return JUNCTION.guarded;
    case ACCESS.closed:
      return JUNCTION.blocked;
    default:
      break;
  }
  if (OPEN_BARRIERS.includes(barrier)) return 0;
  return GATES.includes(barrier) && tags.get('locked') !== 'yes' ? JUNCTION.gate : JUNCTION.blocked;
}
