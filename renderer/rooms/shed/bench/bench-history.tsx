import type { Calibration } from '../../../../core/book/index.ts';
import { SHEETS, type Trace, tracesOf } from '../../../../core/calibrate/index.ts';
import { benchWords } from '../../../texts/shed/index.ts';
import { labelOf, shownFigure } from './bench-form.tsx';

const WIDTH = 260;
const HEIGHT = 64;
const EDGE = 6;

/** Calibrations that were kept, newest first, and how a figure went over time. */
export function BenchHistory({ calibrations }: { readonly calibrations: readonly Calibration[] }) {
  if (calibrations.length === 0) return <p className="quiet small">{benchWords.history.none}</p>;
  const [trace] = tracesOf(calibrations);
  const newest = calibrations.toSorted((left, right) => right.on.localeCompare(left.on));
  return (
    <>
      {trace !== undefined && <TracePlot trace={trace} />}
      <ul className="bench-history">
        {newest.map((each) => (
          <li key={each.id}>
            <b>{each.on}</b> {each.what}
            {each.by !== '' && `, ${each.by}`}
            {each.setting !== '' && ` (${each.setting})`}
            <span className="quiet">
              {' '}
              {each.found
                .slice(0, 3)
                .map((figure) => `${wordsOf(each.what, figure.name)} ${shownFigure(figure.value)}`)
                .join('; ')}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** "carrier rate, gal per acre" for "gpa"; the name itself where the bench knows it no more. */
function wordsOf(kind: string, name: string): string {
  const sheet = SHEETS.find((each) => each.kind === kind);
  return labelOf(sheet?.blanks.find((each) => each.name === name) ?? { words: name });
}

function TracePlot({ trace }: { readonly trace: Trace }) {
  const { name, unit, points } = trace;
  const values = points.map((each) => each.value);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const days = points.map((each) => Date.parse(each.on));
  const [first = 0, last = 0] = [days[0], days.at(-1)];
  const x = (day: number): number => EDGE + ((WIDTH - 2 * EDGE) * (day - first)) / Math.max(1, last - first);
  const y = (value: number): number =>
    HEIGHT - EDGE - ((HEIGHT - 2 * EDGE) * (value - least)) / Math.max(1e-9, most - least);
  const at = points.map((each, index) => ({ x: x(days[index] ?? first), y: y(each.value), point: each }));
  const words = benchWords.history.range(name, unit, shownFigure(least), shownFigure(most), points.length);
  return (
    <figure className="bench-trace">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
        <polyline points={at.map((each) => `${each.x},${each.y}`).join(' ')} />
        {at.map((each) => (
          <circle key={`${each.point.on} ${each.point.value}`} cx={each.x} cy={each.y} r="3" />
        ))}
      </svg>
      <figcaption className="quiet small">{words}</figcaption>
    </figure>
  );
}
