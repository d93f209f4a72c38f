import type { Position } from '../../core/book/index.ts';

/** Tiles that lie behind the lawns, under the host's own address. */
export type TileLook = {
  readonly id: string;
  readonly address: string;
  readonly leastZoom: number;
  readonly mostZoom: number;
  readonly tilePx: number;
  readonly bounds: readonly [number, number, number, number] | null;
  /** Changes when the tiles have to be asked for anew, for instance after the network was allowed. */
  readonly turn: string;
};

/** A picture laid on the ground. */
export type OverlayLook = {
  readonly id: string;
  readonly address: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Ground of its corners: upper left, upper right, lower right, lower left. */
  readonly corners: readonly Position[];
  readonly opacity: number;
};

/** A point that is set while a picture is being laid. */
export type PlacingMark = { readonly words: string; readonly at: Position };

/** Everything behind the lawns. */
export type MapBackdrop = {
  readonly tiles: TileLook | null;
  readonly opacity: number;
  readonly overlays: readonly OverlayLook[];
  readonly marks: readonly PlacingMark[];
  /** Ground to show; a larger count asks anew. */
  readonly lookAt: { readonly count: number; readonly bounds: readonly [number, number, number, number] } | null;
  /** Told how many of the tiles in view did not come; 0 when all did. */
  readonly onMissing: (tilesId: string, missing: number) => void;
  /** Told of a picture that cannot be had, for instance since the book came without it. */
  readonly onPictureLost: (overlayId: string) => void;
  /** Where set, a click on the map chooses a place instead of a lawn. */
  readonly onPick: ((at: Position) => void) | null;
};
