import type { Book, Property, Rig, Treatment, Zone } from '../book/index.ts';
import type { Stand, ZoneMeasure } from '../measure/index.ts';

/** Why a method can or cannot treat a zone. Every answer carries one. */
export type ReachReason =
  | 'fits'
  | 'gate-tight'
  | 'gate-too-narrow'
  | 'too-steep'
  | 'hose-too-short'
  | 'not-carried'
  | 'no-trailer-access'
  | 'no-agitation'
  | 'too-heavy-when-wet'
  | 'no-head-for-treatment'
  | 'method-wrong-for-treatment'
  | 'vessel-below-least-volume'
  | 'zone-not-measured'
  | 'no-room-for-swath';

/** Why a machine that gets onto a zone is no way to treat it: nothing of the ground takes its swath. */
export const NO_ROOM = 'its swath fits nowhere on this ground';
/** A larger share of the ground that is not reached is all of it. */
export const NOWHERE = 1 - 1e-6;

/** One way to treat a zone: a machine with one of its heads, or a hand method. */
export type Method =
  | { readonly kind: 'machine'; readonly machineId: string; readonly headId: string }
  | { readonly kind: 'hand'; readonly handMethodId: string };

/** Can this method treat this zone in this way? */
export type ReachQuestion = {
  readonly book: Book;
  readonly property: Property;
  readonly zone: Zone;
  readonly zoneMeasure: ZoneMeasure;
  /** From where the machine or reel can stand to the farthest corner of the zone, ft; null where nobody knows. */
  readonly farthestFt: number | null;
  /** Zones on which the machine that a hose draws from could stand instead, with the way from there; absent: none is known. */
  readonly stands?: () => readonly Stand[];
  readonly treatment: Treatment;
  readonly method: Method;
  /** Rig that would do it; null asks about the method alone, whoever carries it. */
  readonly rig: Rig | null;
  /** True where the ground counts as wet. */
  readonly wetGround: boolean;
};

/** Whether one method can do one treatment on one zone, with the reason. */
export type ReachAnswer = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly treatmentId: string;
  readonly method: Method;
  /** Rig asked about; null where the question was put for the method alone. */
  readonly rigId: string | null;
  readonly can: boolean;
  readonly reason: ReachReason;
  /** True where it fits with less than 2 inches to spare. */
  readonly tight: boolean;
  /** The reason in words with its figures, for instance "gate 34 in, machine 36 in". Never empty. */
  readonly words: string;
};
