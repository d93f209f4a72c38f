import type { Position } from '../../../core/book/index.ts';

/** What a drawn line stands for; it decides its colour and its word. */
export type DrawTone = 'zone' | 'exclusion' | 'hole' | 'cut' | 'split-line' | 'avoid';

/** An outline or a line that is being drawn, or one of the book whose corners are being moved. */
export type OutlineWish = {
  readonly kind: 'outline';
  readonly tone: DrawTone;
  /** 'drawing': each click is a corner more. 'editing': the corners are there, and clicks add none. */
  readonly mode: 'drawing' | 'editing';
  /** True where the last corner is joined with the first one. */
  readonly closes: boolean;
  readonly corners: readonly Position[];
  /** The figure as it would be finished now, where that is more than the corners joined up. */
  readonly shape: readonly Position[];
  /** Other rings of the same outline, drawn but not changed. */
  readonly others: readonly (readonly Position[])[];
  /** Places where sides cross, shown in red. */
  readonly crossings: readonly Position[];
  /** A corner that is marked, or null. */
  readonly marked: number | null;
  /** The shape with one corner more at this place. */
  readonly preview: (at: Position) => readonly Position[];
  /** Where sides of a shape that is only previewed would cross. */
  readonly crossingsWith: (shape: readonly Position[]) => readonly Position[];
  /** Lines of text beside the pointer, for the outline with one corner more at this place; null: as it stands. */
  readonly readout: (at: Position | null) => readonly string[];
};

/** A single place that is being chosen. */
export type PlaceWish = {
  readonly kind: 'place';
  readonly words: string;
  readonly at: Position | null;
};

/** Nothing is drawn: clicks choose what is there, and a rectangle with Shift chooses what is in it. */
export type ChooseWish = { readonly kind: 'choose' };

export type DrawWish = OutlineWish | PlaceWish | ChooseWish;

export type SnapKind = 'corner' | 'edge' | 'crossing';
export type Snapped = { readonly kind: SnapKind; readonly at: Position };

/** Looks for something to snap to near a place. `own` are the corners that are being drawn. */
export type SnapFinder = (at: Position, toleranceFt: number, own: readonly Position[]) => Snapped | null;

/** West, south, east, north in degrees. */
export type Box = readonly [west: number, south: number, east: number, north: number];

export type DrawEvents = {
  /** A click, or Enter at the crosshair; snapped already. */
  readonly onPoint: (at: Position) => void;
  /** First corner, double click, or Enter: the outline is to be finished. */
  readonly onFinish: () => void;
  readonly onMoveCorner: (index: number, to: Position) => void;
  /** A corner between two others, before the one at `index`. */
  readonly onInsertCorner: (index: number, at: Position) => void;
  readonly onRemoveCorner: (index: number) => void;
  /** The other button at a corner, or beside all of them: null. */
  readonly onMarkCorner: (index: number | null) => void;
  /** A drag goes on: the corners as they would be. Null when it has ended. */
  readonly onDragging: (corners: readonly Position[] | null) => void;
  /** Shift and an arrow key while nothing is drawn, in steps east and north; true where something was moved by it. */
  readonly onNudge: (east: number, north: number) => boolean;
  readonly onBox: (box: Box, add: boolean) => void;
};

/**
 * Drawing on a map, whatever library does it. The corners belong to the caller: `show` says what there is now, and is
 * called again with the corners that an event asked for.
 */
export type DrawSurface = {
  readonly show: (wish: DrawWish | null) => void;
  /** Puts the crosshair at a place, or in the middle, and the focus on the map. */
  readonly pointAt: (at: Position | null) => void;
  readonly close: () => void;
};
