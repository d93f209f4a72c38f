import { create } from 'zustand';
import { type AppError, err, ok, type Result } from '../../core/base/index.ts';
import type { AreaGeometry } from '../../core/book/index.ts';
import type { Elevation } from '../../core/contract/index.ts';
import { sampleGrid, slopeFromHeights } from '../../core/measure/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { pickFile } from './files.ts';
import { callHost } from './host.ts';

type HeightsState = {
  /** The picture of heights that was chosen last; it serves for all lawns until another is chosen. */
  readonly file: { readonly token: string; readonly name: string } | null;
  readonly isReading: boolean;
};

export const useHeights = create<HeightsState>(() => ({ file: null, isReading: false }));

/** Ground less steep than this falls no way that would matter, degrees. */
const LEVEL_DEG = 0.5;

/** A slope read from a picture of heights. */
export type HeightSlope = {
  readonly slopeDeg: number;
  /** Which way the ground falls, clockwise from north; null on ground so level that it means nothing. */
  readonly downhillDeg: number | null;
  readonly fileName: string;
  readonly samples: number;
  /** How far the heights lie off the plane, root mean square. */
  readonly residualM: number;
  /** False where the file names no unit of heights and metres were assumed. */
  readonly isUnitStated: boolean;
};

/** Lets the user choose a picture of heights. True where one was chosen. */
export async function chooseHeights(): Promise<boolean> {
  const picked = await pickFile('heights');
  if (picked === null) return false;
  useHeights.setState({ file: { token: picked.token, name: picked.name } });
  return true;
}

/**
 * The slope of an outline from the chosen picture of heights. Errors: those of reading it; `nothing-to-do` where it has no heights
 * there, or too few for a plane. A file that cannot be used is given up, so that another can be chosen.
 */
export async function readHeightSlope(outline: AreaGeometry): Promise<Result<HeightSlope>> {
  const { file } = useHeights.getState();
  if (file === null)
    return err('nothing-to-do', 'slope', storesWords.heights.noneChosen, storesWords.heights.noneChosenAdvice);
  const positions = sampleGrid(outline);
  useHeights.setState({ isReading: true });
  const answer = await callHost('ground.elevation', {
    token: file.token,
    positions: positions.map(([longitude, latitude]): [number, number] => [longitude, latitude]),
  });
  useHeights.setState({ isReading: false });
  if (!answer.ok) return giveUp(answer.error);
  return fitSlope(answer.value, positions, file.name);
}

function giveUp(error: AppError): Result<never> {
  useHeights.setState({ file: null });
  return { ok: false, error };
}

function fitSlope(
  { heightsM, isUnitStated }: Elevation,
  positions: ReturnType<typeof sampleGrid>,
  fileName: string,
): Result<HeightSlope> {
  const samples = positions.map((position, index) => ({ position, heightM: heightsM[index] ?? null }));
  const fitted = slopeFromHeights(samples);
  if (fitted.kind === 'slope') {
    const slopeDeg = Math.round(fitted.slopeDeg * 100) / 100;
    const downhillDeg = fitted.slopeDeg < LEVEL_DEG ? null : Math.round(fitted.downhillDeg) % 360;
    return ok({ slopeDeg, downhillDeg, fileName, samples: fitted.samples, residualM: fitted.residualM, isUnitStated });
  }
  const hint = storesWords.heights.chooseAdvice;
  return err('nothing-to-do', fileName, fitted.why, hint);
}
