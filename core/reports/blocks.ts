import type { AreaGeometry, Position } from '../book/index.ts';
import type { PictureLeg } from '../passes/index.ts';

/** A column; figures are set right, and 'pen' is an empty column with room to write. */
export type Column = {
  readonly label: string;
  readonly align: 'left' | 'right' | 'pen';
  /** Its share of the width, percent; absent: what its texts need. */
  readonly share?: number;
};

/** An area on a small map. Turf is hatched, exclusions are cross-hatched, water is dotted, so that the map prints in grey. */
export type MapArea = {
  /** 'parcel' is the edge of the lot, 'edge' that of a zone; both without a filling. */
  readonly look: 'turf' | 'exclusion' | 'water' | 'parcel' | 'edge';
  readonly geometry: AreaGeometry;
};
/** A place on a small map; 'name' is its label alone. */
export type MapPoint = {
  readonly look: 'stop' | 'gate' | 'parking' | 'fill-point' | 'name';
  readonly at: Position;
  readonly label: string;
};

/** A picture below a map, with the ground of its corners: upper left, upper right, lower right, lower left. */
export type MapPicture = {
  /** Unique among the pictures of a sheet; letters, digits and hyphens. */
  readonly id: string;
  /** Its bytes as a data address, so that a page with it stands alone. */
  readonly address: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly corners: readonly [Position, Position, Position, Position];
  /** How strong it is, 0 to 1. */
  readonly opacity: number;
  /** Stands below every map that shows it. */
  readonly name: string;
};

/** Passes over one area of a small map. */
export type MapPasses = {
  readonly legs: readonly Pick<PictureLeg, 'kind' | 'positions'>[];
  readonly overlap: AreaGeometry;
  readonly missed: AreaGeometry;
};

/** Lines and patterns of a map that a legend explains, in its order. */
export type MapLegend = readonly ('trim' | 'swath' | 'transit' | 'twice' | 'missed' | 'turf' | 'parking')[];

/**
 * A row of a table: one text per column, or a row whose last text runs over the rest of the columns. A 'stop' begins a part of the
 * table that stays together on paper; 'detail' belongs to the row above it; 'refill' interrupts the work; 'sum' closes a column.
 */
export type TableRow =
  | readonly string[]
  | {
      readonly look: 'stop' | 'detail' | 'refill' | 'sum' | 'plain';
      /** Texts of the first columns. */
      readonly lead: readonly string[];
      /** Over all columns that are left. */
      readonly text: string;
      /** Texts of the last columns, after the wide one. */
      readonly tail?: readonly string[];
    };

/** Stands for a box to tick wherever it appears in a text. */
export const BOX = '[  ]';

/** Something that is known, under its name. */
export type Fact = { readonly label: string; readonly value: string };

/** What a sheet is made of; screens, paper and the command line draw the same blocks. */
export type Block =
  | { readonly kind: 'heading' | 'subheading'; readonly text: string }
  | {
      readonly kind: 'facts';
      readonly facts: readonly Fact[];
      /** One fact in a line, for long ones; absent: two side by side. */
      readonly wide?: boolean;
    }
  | { readonly kind: 'table'; readonly columns: readonly Column[]; readonly rows: readonly TableRow[] }
  | { readonly kind: 'checklist'; readonly items: readonly string[] }
  | { readonly kind: 'cautions'; readonly title: string; readonly items: readonly string[] }
  | { readonly kind: 'note'; readonly text: string }
  /** The user's own text, line by line: a letter, or a sign to be read from afar. */
  | { readonly kind: 'own-text'; readonly look: 'letter' | 'sign'; readonly text: string }
  | {
      readonly kind: 'map';
      /** How high it is; a 'large' one takes most of a page. Absent: the usual. */
      readonly size?: 'small' | 'medium' | 'large';
      /** What is explained beside or below the map; absent: nothing. */
      readonly legend?: MapLegend;
      /** Pictures below everything else; the sheet holds their bytes. They do not change what the map takes in. */
      readonly pictures?: readonly MapPicture[];
      readonly areas: readonly MapArea[];
      readonly points: readonly MapPoint[];
      /** A line through these places, in order; empty for none. */
      readonly route: readonly Position[];
      /** Passes of machines over the turf: lines with an arrow on each swath, ground gone over twice and ground not reached. */
      readonly passes?: readonly MapPasses[];
      /** Units of the scale bar. */
      readonly units: 'us' | 'metric';
    }
  /** A line for a pen: label, and room behind it. */
  | { readonly kind: 'blanks'; readonly labels: readonly string[] }
  /** Stays on one page where it fits on one. */
  | { readonly kind: 'group'; readonly blocks: readonly Block[] }
  /** Begins a page of its own, as far as it fits on one in normal print. */
  | {
      readonly kind: 'page';
      readonly blocks: readonly Block[];
      /** In large print, where it would not fit on one page, it follows on without a new one. */
      readonly runsOn?: boolean;
    };

/** One sheet of paper as it is said, before it has a form: a title and blocks below it. */
export type Sheet = {
  /** Unique among the sheets of a plan: kind, date and rig, or kind and property. */
  readonly id: string;
  readonly title: string;
  readonly subtitle: string;
  /** True where the book is made up: every page says so. */
  readonly invented: boolean;
  /** Pictures that its maps show, each once. */
  readonly pictures?: readonly MapPicture[];
  readonly blocks: readonly Block[];
};

export function left(label: string, share?: number): Column {
  return column(label, 'left', share);
}

export function right(label: string, share?: number): Column {
  return column(label, 'right', share);
}

export function pen(label: string, share?: number): Column {
  return column(label, 'pen', share);
}

function column(label: string, align: Column['align'], share: number | undefined): Column {
  return share === undefined ? { label, align } : { label, align, share };
}
