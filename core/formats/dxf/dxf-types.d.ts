/**
 * The little of dxf that is used here; the package has no types of its own. core/tsconfig.json points the package to this
 * file. Nothing in a file is certain, so every member may be missing.
 */
type DxfPoint = { readonly x?: number; readonly y?: number; readonly bulge?: number };

export type DxfEntity = DxfPoint & {
  readonly type: string;
  readonly layer?: string;
  readonly handle?: string;
  readonly visible?: boolean;
  readonly paperSpace?: number;
  readonly extrusionX?: number;
  readonly extrusionY?: number;
  readonly extrusionZ?: number;
  readonly start?: DxfPoint;
  readonly end?: DxfPoint;
  readonly vertices?: readonly DxfPoint[];
  readonly closed?: boolean;
  readonly polygonMesh?: boolean;
  readonly polyfaceMesh?: boolean;
  readonly r?: number;
  /** Radians. */
  readonly startAngle?: number;
  readonly endAngle?: number;
  readonly majorX?: number;
  readonly majorY?: number;
  readonly axisRatio?: number;
  readonly degree?: number;
  readonly knots?: readonly number[];
  readonly weights?: readonly number[];
  readonly controlPoints?: readonly DxfPoint[];
  readonly block?: string;
  readonly scaleX?: number;
  readonly scaleY?: number;
  /** Degrees. */
  readonly rotation?: number;
  readonly columnCount?: number;
  readonly rowCount?: number;
  readonly columnSpacing?: number;
  readonly rowSpacing?: number;
};

export type DxfBlock = DxfPoint & { readonly name?: string; readonly entities?: readonly DxfEntity[] };

export function parseString(text: string): {
  readonly blocks: readonly DxfBlock[];
  readonly entities: readonly DxfEntity[];
};
