import type { AreaGeometry, Position } from '../book/index.ts';

/** One cell under a column; figures are set right. */
export type Column = { readonly label: string; readonly align: 'left' | 'right' };

/** An area on a small map. Turf is hatched, exclusions are cross-hatched, water is dotted, so that the map prints in grey. */
export type MapArea = { readonly look: 'turf' | 'exclusion' | 'water'; readonly geometry: AreaGeometry };
export type MapPoint = { readonly look: 'stop' | 'gate' | 'parking'; readonly at: Position; readonly label: string };

/** What a sheet is made of; screens, paper and the command line draw the same blocks. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'facts'; readonly facts: readonly { readonly label: string; readonly value: string }[] }
  | { readonly kind: 'table'; readonly columns: readonly Column[]; readonly rows: readonly (readonly string[])[] }
  | { readonly kind: 'checklist'; readonly items: readonly string[] }
  | { readonly kind: 'cautions'; readonly title: string; readonly items: readonly string[] }
  | { readonly kind: 'note'; readonly text: string }
  | {
      readonly kind: 'map';
      readonly areas: readonly MapArea[];
      readonly points: readonly MapPoint[];
      /** A line through these places, in order; empty for none. */
      readonly route: readonly Position[];
    }
  /** A line for a pen: label, and room behind it. */
  | { readonly kind: 'blanks'; readonly labels: readonly string[] }
  | { readonly kind: 'page-break' };

export type Sheet = {
  readonly id: string;
  readonly title: string;
  readonly subtitle: string;
  /** True where the book is made up: every page says so. */
  readonly invented: boolean;
  readonly blocks: readonly Block[];
};

export function left(label: string): Column {
  return { label, align: 'left' };
}

export function right(label: string): Column {
  return { label, align: 'right' };
}
