import type { Geometry } from 'geojson';
import type { Issue, Progress, Result, StopSignal } from '../base/index.ts';
import type { TravelMatrix } from '../book/index.ts';

/** Travel times between places, read from a file. `accepted + rejected = found`, counted in rows. */
export type MatrixPreview = {
  readonly matrix: TravelMatrix;
  readonly found: number;
  readonly accepted: number;
  readonly rejected: number;
  readonly issues: readonly Issue[];
};

/** What one field of a record holds. */
export type AttributeValue = string | number | boolean | null;

/** One record of a ground file as the file has it, before any field has been given a meaning. */
export type SourceFeature = {
  /** File and record in words, "parcels.zip, layer lots, record 12". */
  readonly where: string;
  readonly id: string | null;
  /** In the coordinates of its layer; null where the record has none, or none that can be read (then with an error in `issues`). */
  readonly geometry: Geometry | null;
  readonly attributes: Readonly<Record<string, AttributeValue>>;
  readonly issues: readonly Issue[];
};

/** What the numbers of a layer mean. */
export type SourceCoordinates =
  /** Longitude and latitude (WGS84); `from` names the system that they were turned from, "EPSG:2249". */
  | { readonly kind: 'degrees'; readonly from: string }
  /** Units of a drawing without a place on earth; to be placed by two known points. */
  | { readonly kind: 'drawing'; readonly metresPerUnit: number | null; readonly why: string }
  /** The file does not say, or names a system that is not known: somebody has to. */
  | { readonly kind: 'unknown'; readonly why: string };

/** Records of one kind out of a file of ground. */
export type SourceLayer = {
  readonly name: string;
  readonly coordinates: SourceCoordinates;
  /** Names of the attributes, in the file's order. */
  readonly fields: readonly string[];
  readonly features: readonly SourceFeature[];
};

/** Everything a ground file holds. Nothing is left out in silence: what could not be read is a feature or an issue. */
export type GroundSource = {
  readonly formatId: string;
  readonly layers: readonly SourceLayer[];
  /** About the file as a whole. */
  readonly issues: readonly Issue[];
};

/** How much one file may hold. A file above a limit is refused as a whole with `file-too-large`, never cut short. */
export type ReadLimits = {
  readonly fileBytes: number;
  /** Of an archive, all entries together after unpacking. */
  readonly unpackedBytes: number;
  /** Of an archive. */
  readonly entries: number;
  readonly features: number;
  /** Positions of all outlines together. */
  readonly positions: number;
};

/** What is done with a walked track. */
export type WalkOptions = {
  /** A track whose ends are this near to each other is closed as a polygon. */
  readonly closeWithinM: number;
  /** Points nearer than this to the line through their neighbours are left out; 0 keeps all. */
  readonly simplifyM: number;
};

/** What a host found in a GeoPackage (OGC 12-128r18): its tables with a geometry, and the systems of coordinates it names. */
export type GeoPackageContent = {
  readonly tables: readonly GeoPackageTable[];
  readonly systems: readonly GeoPackageSystem[];
  /** About tables that could not be read; places within the file, "layer lots". */
  readonly issues: readonly Issue[];
};

/** What one cell of a table holds; a geometry comes as its bytes. */
export type GeoPackageCell = string | number | null | Uint8Array;

/** One table of features of a GeoPackage. */
export type GeoPackageTable = {
  /** What the table is called for people. */
  readonly name: string;
  readonly geometryColumn: string;
  /** The column with the records' numbers; null where there is none. */
  readonly keyColumn: string | null;
  /** `id` of one of the systems; 0 and -1 mean "not said" (clause 1.1.2.1.2). */
  readonly systemId: number;
  readonly columns: readonly string[];
  /** In the order of the columns. */
  readonly rows: readonly (readonly GeoPackageCell[])[];
};

/** One coordinate system that a GeoPackage describes. */
export type GeoPackageSystem = {
  readonly id: number;
  /** Who gave the code, "EPSG". */
  readonly organization: string;
  readonly code: number;
  /** Well-known text. */
  readonly definition: string;
};

/** What reading a file of ground needs beside its bytes. */
export type GroundReadOptions = {
  readonly limits: ReadLimits;
  readonly walk: WalkOptions;
  /** Asked now and then; where it says stop, the answer is the error `cancelled`. */
  readonly signal?: StopSignal;
  readonly onProgress?: (progress: Progress) => void;
  /** Text in an encoding by its name in the WHATWG Encoding Standard; null where the host does not know it. */
  readonly decode?: (bytes: Uint8Array, encoding: string) => string | null;
  /** The tables of a GeoPackage, which is a database that only a host can open. */
  readonly geopackage?: GeoPackageContent;
};

/** A kind of file that ground can be read from. */
export type GroundReader = {
  readonly id: string;
  readonly title: string;
  /** Endings of file names, without the dot. */
  readonly extensions: readonly string[];
  /** A quick look at the content; true where the file may be of this kind. Never throws. */
  readonly looksLike: (bytes: Uint8Array, fileName: string) => boolean;
  /**
   * Everything the file holds. Errors: `format-invalid` where it is not of this kind, `format-unknown` for a variety that is
   * not read, `file-too-large`, `cancelled`; each with the place in the file.
   */
  readonly read: (bytes: Uint8Array, fileName: string, options: GroundReadOptions) => Promise<Result<GroundSource>>;
};
