import type { Issue, Result } from '../base/index.ts';
import type { Property, TravelMatrix } from '../book/index.ts';

/** What came of reading properties from a file, before anything is added to a book. `accepted + rejected = found`. */
export type GroundPreview = {
  /** Ready for a book, in the order of the file. */
  readonly properties: readonly Property[];
  /** Ids of properties whose parking point the file does not give; it was put on their outline. */
  readonly parkingAssumed: readonly string[];
  /** Rows or features in the file. */
  readonly found: number;
  /** Of those, how many are in `properties`: as a property or as a part of one. */
  readonly accepted: number;
  /** Of those, how many are not. Each has an error in `issues`. */
  readonly rejected: number;
  /** Places name the file and the row or feature. */
  readonly issues: readonly Issue[];
};

/** Travel times between places, read from a file. `accepted + rejected = found`, counted in rows. */
export type MatrixPreview = {
  readonly matrix: TravelMatrix;
  readonly found: number;
  readonly accepted: number;
  readonly rejected: number;
  readonly issues: readonly Issue[];
};

type FormatBase = {
  readonly id: string;
  readonly title: string;
  /** Endings of file names, without the dot. */
  readonly extensions: readonly string[];
  /** A quick look at the text; true where the format may be this one. */
  readonly looksLike: (text: string) => boolean;
};

/** A file format that can be read. `where` is the file's name, for messages. */
export type GroundFormat = FormatBase & {
  readonly kind: 'ground';
  readonly read: (text: string, where: string) => Result<GroundPreview>;
};
export type MatrixFormat = FormatBase & {
  readonly kind: 'matrix';
  readonly read: (text: string, where: string) => Result<MatrixPreview>;
};
export type FileFormat = GroundFormat | MatrixFormat;
