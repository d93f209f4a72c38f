import type { BookRoads, Position, Property } from '../../core/book/index.ts';
import type { PassPicture } from '../../core/passes/index.ts';

/** A number or a word that stands on a lawn. */
export type LawnLabel = {
  readonly text: string;
  /** What the label is: a stop of the shown day, the day of a round, or the lawn's own name. */
  readonly kind: 'stop' | 'day' | 'name';
  /** Which of the day colours; 0 for none. */
  readonly day: number;
  readonly spoken: string;
};

export type FillMark = { readonly id: string; readonly name: string; readonly at: Position; readonly isHome: boolean };

export type AvoidedArea = BookRoads['avoid'][number];

/** A drive drawn on the map: along the roads where the way is known, else a straight line; the caption says so. */
export type RouteLeg = {
  readonly kind: 'out' | 'between' | 'fill' | 'home';
  readonly from: Position;
  readonly to: Position;
  /** The way along the roads. */
  readonly along?: readonly Position[];
};

/** How wide gates are compared with the machines, in inches; null where there is no machine. */
export type GateScale = { readonly narrowestMachineIn: number; readonly spareIn: number } | null;

/** A part of a lawn that can be clicked. */
export type MapPart = {
  readonly propertyId: string;
  readonly kind: 'zone' | 'exclusion' | 'gate';
  readonly partId: string;
};

export function partKey({ kind, partId }: Pick<MapPart, 'kind' | 'partId'>): string {
  return `${kind} ${partId}`;
}

/** Passes over a zone, and the stretch of them that is read, by its number along the way. */
export type PassScene = { readonly picture: PassPicture; readonly leg: number | null };

/** Everything the map shows. */
export type MapScene = {
  readonly properties: readonly Property[];
  readonly labels: ReadonlyMap<string, LawnLabel>;
  /** Where true, lawns without a label are drawn faintly. */
  readonly dimOthers: boolean;
  readonly selectedPropertyId: string | null;
  readonly selectedZoneId: string | null;
  readonly fillMarks: readonly FillMark[];
  /** Areas that trucks drive round. */
  readonly avoided: readonly AvoidedArea[];
  readonly route: readonly RouteLeg[];
  /** Said in the corner of the map of the drives, with whose roads they follow. */
  readonly routeCaption: string;
  readonly gateScale: GateScale;
  /** Width of a gate in words. */
  readonly gateWords: (clearWidthIn: number) => string;
  /** Parts of the selected lawn that are chosen, as partKey writes them. */
  readonly chosen?: readonly string[];
  /** The part whose corners are being moved: it is drawn by the drawing, not here. */
  readonly hidden?: string | null;
  readonly passes?: PassScene | null;
};
