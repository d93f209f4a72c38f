import type { Sheet, TipCombination } from '../../../../core/calibrate/index.ts';
import { benchWords } from '../../../texts/shed/index.ts';
import { labelOf, shownFigure } from './bench-form.tsx';
import type { Worked } from './bench-state.ts';

/** What follows from the form: figures, the arithmetic, its source. */
export function BenchAnswerView({ sheet, worked }: { readonly sheet: Sheet; readonly worked: Worked }) {
  const { answers, working, source, combinations } = worked;
  return (
    <div className="bench-answer" aria-live="polite">
      {answers.length > 0 && (
        <dl className="bench-figures">
          {answers.map(({ name, value, unit }) => (
            <div key={name}>
              <dt>{labelOf(sheet.blanks.find((each) => each.name === name) ?? { words: name })}</dt>
              <dd>
                {shownFigure(value)} {unit}
              </dd>
            </div>
          ))}
        </dl>
      )}
      {combinations.length > 0 && <Combinations combinations={combinations} />}
      {working.length > 0 && (
        <details>
          <summary>{benchWords.answer.working}</summary>
          <ol className="bench-working">
            {working.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
        </details>
      )}
      <p className="quiet small">{benchWords.answer.source(source)}</p>
    </div>
  );
}

function Combinations({ combinations }: { readonly combinations: readonly TipCombination[] }) {
  return (
    <>
      <table className="table bench-combinations">
        <caption>{benchWords.answer.tipsTitle}</caption>
        <thead>
          <tr>
            <th scope="col">{benchWords.answer.tip}</th>
            <th scope="col">{benchWords.answer.psi}</th>
            <th scope="col">{benchWords.answer.mph}</th>
            <th scope="col">{benchWords.answer.galPerArea}</th>
          </tr>
        </thead>
        <tbody>
          {combinations.map(({ size, colour, psi, mph, galPer1000SqFt }) => (
            <tr key={`${size} ${psi} ${mph}`}>
              <td>
                {size}, {colour}
              </td>
              <td className="number">{psi}</td>
              <td className="number">{mph}</td>
              <td className="number">{shownFigure(galPer1000SqFt)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet small">{benchWords.answer.dropletsNote}</p>
    </>
  );
}
