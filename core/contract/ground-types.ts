import type { AppError } from '../base/index.ts';

/** Something that can lie behind the lawns on the map. The host serves its tiles under its own address. */
export type Background = {
  readonly id: string;
  /** 'online': fetched from another machine and kept for a while. 'file': read from a file on this one. */
  readonly kind: 'online' | 'file';
  readonly name: string;
  /** Whose picture it is; has to be shown with it. */
  readonly credit: string;
  /** The machine that would be asked; null for a file. */
  readonly asks: string | null;
  /** Whether the user has allowed that machine to be asked. Without it only tiles that were fetched before are shown. */
  readonly allowed: boolean;
  /** Address of a tile on the host's own origin, with {z}, {x} and {y}. */
  readonly address: string;
  readonly leastZoom: number;
  /** The closest zoom that there are tiles for; beyond it they are enlarged. */
  readonly mostZoom: number;
  /** Edge of a tile: 256 or 512. */
  readonly tilePx: number;
  /** West, south, east, north in degrees; null where it covers the earth. */
  readonly bounds: readonly [number, number, number, number] | null;
  /** Why it cannot be shown, for instance that its file is gone; null where it can. */
  readonly fault: AppError | null;
};

/** What can lie behind the map, and the folder in which files of tiles are found by themselves. */
export type BackgroundList = {
  readonly backgrounds: readonly Background[];
  /** Shortened for people to read. */
  readonly folder: string;
};

/** The newest failure of a background's tiles; null after one that came. */
export type BackgroundTrouble = { readonly trouble: AppError | null };

/** A picture that the book file keeps, by its name there; its size in pixels. */
export type KeptPicture = { readonly picture: string; readonly widthPx: number; readonly heightPx: number };

/** A street file that addresses can be looked up in. */
export type StreetsInfo = {
  readonly id: string;
  readonly name: string;
  readonly streets: number;
  /** Pieces between crossings that have house numbers. */
  readonly pieces: number;
};

/** What a street file brought when it was loaded. */
export type StreetsLoaded = StreetsInfo & {
  /** Lines in the file, and how many of them had no name or no house numbers. */
  readonly found: number;
  readonly unused: number;
};
