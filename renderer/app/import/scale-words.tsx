import { type ControlPoint, readScale, scaleErrorShare, unitResidualM } from '../../../core/intake/index.ts';
import { useFormat } from '../../stores/index.ts';

/** A point is clicked or read off with about this error: 1 ft. Common practice, no source. */
const POINT_ERROR_M = 0.3048;

type ScaleWordsProps = {
  readonly first: ControlPoint | null;
  readonly second: ControlPoint | null;
  /** By the drawing's own word, which is not to be trusted. */
  readonly metresPerUnit: number | null;
};

/** What the two points say, how well they agree with the drawing's own unit, and how sure an area is. */
export function ScaleWords({ first, second, metresPerUnit }: ScaleWordsProps) {
  const words = useFormat();
  if (first === null || second === null) {
    return <p className="quiet small">Two points far apart, such as two corners of the lot, give scale and turn.</p>;
  }
  const scale = readScale(first, second);
  if (scale === null) return <p className="stop small">The two points are the same, or nearer than 3 ft.</p>;
  const feet = (metres: number) => words.length(metres / POINT_ERROR_M);
  const share = (100 * scaleErrorShare(POINT_ERROR_M, scale.baseM)).toFixed(1);
  return (
    <p className="small">
      One unit of the drawing is {feet(scale.metresPerUnit)}; the points are {feet(scale.baseM)} apart. With each of
      them off by 1 ft an area is likely off by {share} %.
      {metresPerUnit !== null &&
        ` By its own unit the second point would lie ${feet(unitResidualM(first, second, metresPerUnit))} from its place.`}
    </p>
  );
}
