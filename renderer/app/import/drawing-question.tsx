import { useState } from 'react';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Position } from '../../../core/book/index.ts';
import type { SourceCoordinates } from '../../../core/formats/index.ts';
import { type ControlPoint, readScale, scaleErrorShare, unitResidualM } from '../../../core/intake/index.ts';
import { placeDrawing, useFormat } from '../../stores/index.ts';
import { DraftInput, Field } from '../../ui/index.ts';

type Pair = readonly [number, number];
type Typed = { readonly drawing: Pair | null; readonly ground: Position | null };
const EMPTY: Typed = { drawing: null, ground: null };

type Drawing = Extract<SourceCoordinates, { kind: 'drawing' }>;

/** Asks where a drawing lies: two points with their places on the ground, each typed as two numbers. */
export function DrawingQuestion({ given }: { readonly given: Drawing }) {
  const [typed, setTyped] = useState<readonly [Typed, Typed]>([EMPTY, EMPTY]);
  const change = (index: 0 | 1, changes: Partial<Typed>) => {
    const after = typed.with(index, { ...typed[index], ...changes }) as [Typed, Typed];
    setTyped(after);
    const [first, second] = after.map(pointOf);
    const isWhole = first !== undefined && second !== undefined && first !== null && second !== null;
    placeDrawing(isWhole ? { kind: 'two-points', first, second } : null);
  };
  return (
    <fieldset className="import-question">
      <legend>Where does the drawing lie?</legend>
      <p className="quiet small">{given.why}</p>
      {([0, 1] as const).map((index) => (
        <div key={index} className="import-points">
          <PairInput
            label={`Point ${index + 1} in the drawing: x, y`}
            pair={typed[index].drawing}
            onRead={(drawing) => change(index, { drawing })}
          />
          <PairInput
            label={`Point ${index + 1} on the ground: latitude, longitude`}
            pair={typed[index].ground === null ? null : [typed[index].ground[1], typed[index].ground[0]]}
            most={[90, 180]}
            onRead={([latitude, longitude]) => change(index, { ground: [longitude, latitude] })}
          />
        </div>
      ))}
      <ScaleWords typed={typed} metresPerUnit={given.metresPerUnit} />
    </fieldset>
  );
}

type PairInputProps = {
  readonly label: string;
  readonly pair: Pair | null;
  readonly most?: Pair;
  readonly onRead: (pair: Pair) => void;
};

function PairInput({ label, pair, most, onRead }: PairInputProps) {
  return (
    <Field label={label}>
      <DraftInput
        label={label}
        text={pair === null ? '' : pair.join(', ')}
        onCommit={(text) => {
          const parts = text.split(/[\s,;]+/).map(Number);
          const [first, second] = parts;
          const isPair = parts.length === 2 && parts.every(Number.isFinite);
          if (!isPair || first === undefined || second === undefined) {
            return notRead('two numbers', 'Enter two numbers with a comma between them.');
          }
          if (most !== undefined && (Math.abs(first) > most[0] || Math.abs(second) > most[1])) {
            return notRead('a place', 'Enter latitude, then longitude, in degrees: 39.9612, -82.9988.');
          }
          onRead([first, second]);
          return ok(text);
        }}
      />
    </Field>
  );
}

function notRead(what: string, hint: string): Result<never> {
  return err('quantity-unreadable', 'the import', `This is not ${what}.`, hint);
}

function pointOf({ drawing, ground }: Typed): ControlPoint | null {
  return drawing === null || ground === null ? null : { drawing, ground };
}

/** A point is clicked or read off with about this error: 1 ft. Common practice, no source. */
const POINT_ERROR_M = 0.3048;

/** What the two points say, how well they agree with the drawing's own unit, and how sure an area is. */
function ScaleWords({
  typed,
  metresPerUnit,
}: {
  readonly typed: readonly [Typed, Typed];
  readonly metresPerUnit: number | null;
}) {
  const words = useFormat();
  const [first, second] = [pointOf(typed[0]), pointOf(typed[1])];
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
