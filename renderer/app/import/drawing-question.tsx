import { useState } from 'react';
import { ok } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import type { SourceCoordinates } from '../../../core/formats/index.ts';
import type { ControlPoint, CoordinatesAnswer } from '../../../core/intake/index.ts';
import { METRES_PER_FOOT, parseLength } from '../../../core/units/index.ts';
import { placeDrawing } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { Choice, DraftInput, Field } from '../../ui/index.ts';
import { notRead, type Pair, PairInput } from './pair-input.tsx';
import { ScaleWords } from './scale-words.tsx';

type Typed = { readonly drawing: Pair | null; readonly ground: Position | null };
/** What has been typed so far; it becomes an answer as soon as it is whole. */
type Placement = {
  readonly by: 'two-points' | 'one-point';
  readonly first: Typed;
  readonly second: Typed;
  readonly metresPerUnit: number | null;
  readonly bearingDeg: number;
};

const EMPTY: Typed = { drawing: null, ground: null };
const WAYS = [
  { value: 'two-points', words: importWords.drawingQuestion.twoPoints },
  { value: 'one-point', words: importWords.drawingQuestion.onePoint },
] as const;

type DrawingQuestionProps = {
  readonly given: Extract<SourceCoordinates, { kind: 'drawing' }>;
  readonly answer: CoordinatesAnswer | null;
};

/** Asks where a drawing lies, by points that are known in it and on the ground. */
export function DrawingQuestion({ given, answer }: DrawingQuestionProps) {
  const [typed, setTyped] = useState(() => typedBefore(answer, given.metresPerUnit));
  const change = (changes: Partial<Placement>) => {
    const after = { ...typed, ...changes };
    setTyped(after);
    placeDrawing(answerOf(after));
  };
  return (
    <fieldset className="import-question">
      <legend>{importWords.drawingQuestion.title}</legend>
      <p className="quiet small">{given.why}</p>
      <Field label={importWords.drawingQuestion.placedBy}>
        <Choice
          label={importWords.drawingQuestion.placedBy}
          value={typed.by}
          options={WAYS}
          onChoose={(by) => change({ by })}
        />
      </Field>
      <PointRow number={1} typed={typed.first} onChange={(first) => change({ first })} />
      {typed.by === 'two-points' ? (
        <>
          <PointRow number={2} typed={typed.second} onChange={(second) => change({ second })} />
          <ScaleWords first={pointOf(typed.first)} second={pointOf(typed.second)} metresPerUnit={given.metresPerUnit} />
        </>
      ) : (
        <UnitRow typed={typed} onChange={change} />
      )}
    </fieldset>
  );
}

type PointRowProps = {
  readonly number: number;
  readonly typed: Typed;
  readonly onChange: (typed: Typed) => void;
};

function PointRow({ number, typed, onChange }: PointRowProps) {
  const { drawing, ground } = typed;
  return (
    <div className="import-points">
      <PairInput
        label={importWords.drawingQuestion.pointInDrawing(number)}
        pair={drawing}
        onRead={(read) => onChange({ ...typed, drawing: read })}
      />
      <PairInput
        label={importWords.drawingQuestion.pointOnGround(number)}
        pair={ground === null ? null : [ground[1], ground[0]]}
        most={[90, 180]}
        onRead={([latitude, longitude]) => onChange({ ...typed, ground: [longitude, latitude] })}
      />
    </div>
  );
}

type UnitRowProps = { readonly typed: Placement; readonly onChange: (changes: Partial<Placement>) => void };

function UnitRow({ typed, onChange }: UnitRowProps) {
  const { metresPerUnit, bearingDeg } = typed;
  return (
    <div className="import-points">
      <Field label={importWords.drawingQuestion.unitLength}>
        <DraftInput
          label={importWords.drawingQuestion.unitLength}
          text={metresPerUnit === null ? '' : importWords.drawingQuestion.metres(metresPerUnit)}
          placeholder={importWords.drawingQuestion.unitPlaceholder}
          onCommit={(text) => {
            const read = parseLength(text);
            if (!read.ok) return read;
            if (read.value === 0)
              return notRead(importWords.drawingQuestion.unitWanted, importWords.drawingQuestion.unitAdvice);
            onChange({ metresPerUnit: Number((read.value * METRES_PER_FOOT).toPrecision(9)) });
            return read;
          }}
        />
      </Field>
      <Field label={importWords.drawingQuestion.bearing}>
        <DraftInput
          label={importWords.drawingQuestion.bearing}
          text={String(bearingDeg)}
          onCommit={(text) => {
            const bearing = Number(text.replace(/\s*°$/, ''));
            if (text === '' || !Number.isFinite(bearing)) {
              return notRead(importWords.drawingQuestion.bearingWanted, importWords.drawingQuestion.bearingAdvice);
            }
            onChange({ bearingDeg: bearing });
            return ok(bearing);
          }}
        />
      </Field>
    </div>
  );
}

function pointOf({ drawing, ground }: Typed): ControlPoint | null {
  return drawing === null || ground === null ? null : { drawing, ground };
}

function answerOf({ by, first, second, metresPerUnit, bearingDeg }: Placement): CoordinatesAnswer | null {
  const [one, two] = [pointOf(first), pointOf(second)];
  if (one === null) return null;
  if (by === 'two-points') return two === null ? null : { kind: 'two-points', first: one, second: two };
  return metresPerUnit === null ? null : { kind: 'one-point', point: one, metresPerUnit, bearingDeg };
}

/** What was typed when the question was answered before. */
function typedBefore(answer: CoordinatesAnswer | null, unitM: number | null): Placement {
  const none: Placement = { by: 'two-points', first: EMPTY, second: EMPTY, metresPerUnit: unitM, bearingDeg: 0 };
  if (answer?.kind === 'two-points') return { ...none, first: answer.first, second: answer.second };
  if (answer?.kind !== 'one-point') return none;
  const { point, metresPerUnit, bearingDeg } = answer;
  return { ...none, by: 'one-point', first: point, metresPerUnit, bearingDeg };
}
