import type { AppError, Progress } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import type { Elevation } from '../../../core/contract/index.ts';
import type { GeoPackageContent, GroundReadOptions, GroundSource } from '../../../core/formats/index.ts';

/** What the worker is started with. */
export type GroundOrder = GroundWork & {
  /** One 32-bit number that both sides see: 1 asks the reading to end. */
  readonly stopFlag: SharedArrayBuffer;
};

export type GroundWork =
  | {
      readonly kind: 'read';
      readonly file: string;
      /** What the file is called for people, with its ending. */
      readonly fileName: string;
      /** The rows of a GeoPackage, which the host reads; null for other files. */
      readonly geopackage: GeoPackageContent | null;
      readonly limits: GroundReadOptions['limits'];
    }
  | {
      readonly kind: 'elevation';
      readonly file: string;
      readonly where: string;
      readonly positions: readonly Position[];
    };

/** What the worker tells: that it has begun, how far it is, and at last what came of it. */
export type GroundMessage =
  | { readonly kind: 'begun' }
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'read'; readonly source: GroundSource }
  | { readonly kind: 'elevation'; readonly elevation: Elevation }
  | { readonly kind: 'failed'; readonly error: AppError };
