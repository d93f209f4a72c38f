import { type ControlPoint, readScale, scaleErrorShare, unitResidualM } from '../../../core/intake/index.ts';
import { formatNumber } from '../../format/index.ts';
import { useFormat } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';

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
    return <p className="quiet small">{importWords.scaleWords.farApart}</p>;
  }
  const scale = readScale(first, second);
  if (scale === null) return <p className="stop small">{importWords.scaleWords.tooNear}</p>;
  const feet = (metres: number) => words.length(metres / POINT_ERROR_M);
  const share = formatNumber(100 * scaleErrorShare(POINT_ERROR_M, scale.baseM), 1);
  return (
    <p className="small">
      {importWords.scaleWords.scale(feet(scale.metresPerUnit), feet(scale.baseM), share)}
      {metresPerUnit !== null &&
        importWords.scaleWords.unitDisagrees(feet(unitResidualM(first, second, metresPerUnit)))}
    </p>
  );
}
