/** How far the reading of a file of ground is. `total` grows where the file does not say how much it holds. */
export type GroundProgress = {
  /** As it was asked with. */
  readonly token: string;
  readonly step: string;
  readonly done: number;
  readonly total: number;
};

/** Heights out of a picture of heights. */
export type Elevation = {
  /** Metres above the zero of the file, in the order of the positions; null outside the picture and where it has no data. */
  readonly heightsM: readonly (number | null)[];
  /** The unit that the file's figures were taken to be in, in words. */
  readonly unit: string;
  /** False where the file names no unit and metres were assumed: common practice, to be shown. */
  readonly isUnitStated: boolean;
  /** The system of the file's map coordinates in words. */
  readonly system: string;
};
