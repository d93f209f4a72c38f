import { useState } from 'react';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Property, SlopeWorking, Zone } from '../../../core/book/index.ts';
import { slopeWorkingWords, workedSlope } from '../../../core/field-work/index.ts';
import { degreesToGrade, quantity } from '../../../core/units/index.ts';
import { useFormat } from '../../stores/index.ts';
import { Choice, Field, QuantityInput } from '../../ui/index.ts';
import { SlopeFromHeights } from './slope-from-heights.tsx';
import { ZoneDirections } from './zone-directions.tsx';
import { putZone, withSlope, withSlopeWorking } from './zone-edits.ts';

type SlopeProps = { readonly property: Property; readonly zone: Zone };

/** Field work of a slope while it is typed. */
type SlopeDraft =
  | { readonly kind: 'rise-run'; readonly riseFt: number | null; readonly runFt: number | null }
  | { readonly kind: 'level'; readonly degrees: number | null };

type Way = 'entered' | SlopeWorking['kind'];
const WAYS: readonly { readonly value: Way; readonly words: string }[] = [
  { value: 'entered', words: 'entered (° or %)' },
  { value: 'rise-run', words: 'rise over run' },
  { value: 'level', words: "a phone's level" },
];

/** Slope of a zone: typed in degrees or percent, from rise over run, or from a level. */
export function SlopeForm({ property, zone }: SlopeProps) {
  const [started, setStarted] = useState<SlopeDraft | null>(null);
  const stored = zone.slopeWorking;
  const draft = started ?? (stored === undefined || stored.kind === 'elevation' ? null : stored);
  const way: Way = draft?.kind ?? stored?.kind ?? 'entered';
  const choose = (next: Way) => {
    if (next === 'rise-run') setStarted({ kind: 'rise-run', riseFt: null, runFt: null });
    else if (next === 'level') setStarted({ kind: 'level', degrees: null });
    else {
      setStarted(null);
      if (stored !== undefined) putZone(property, withSlope(zone, zone.slopeDeg), 'Change how the slope was found');
    }
  };
  const change = (next: SlopeDraft): Result<unknown> => {
    const working = slopeWorkingOf(next);
    if (working === null) {
      setStarted(next);
      return ok(null);
    }
    const sloped = withSlopeWorking(zone, working);
    if (sloped === null)
      return err('quantity-out-of-range', 'slope', 'This is too steep for turf.', 'Enter up to 60°.');
    const done = putZone(property, sloped, 'Change slope');
    if (done.ok) setStarted(null);
    return done;
  };
  const options =
    stored?.kind === 'elevation' ? [...WAYS, { value: 'elevation' as const, words: slopeWorkingWords(stored) }] : WAYS;
  return (
    <>
      <Field label="Slope is">
        <Choice label={`How the slope of ${zone.name} is known`} value={way} options={options} onChoose={choose} />
      </Field>
      {draft === null && <TypedSlope property={property} zone={zone} />}
      {draft?.kind === 'rise-run' && <RiseRun draft={draft} onChange={change} />}
      {draft?.kind === 'level' && (
        <Field label="Level shows">
          <QuantityInput
            kind="slope"
            label="Degrees that the level shows"
            value={draft.degrees}
            onCommit={(degrees) => change({ kind: 'level', degrees })}
          />
        </Field>
      )}
      {draft !== null && <SlopeLine draft={draft} />}
      <SlopeFromHeights property={property} zone={zone} />
      <ZoneDirections property={property} zone={zone} />
    </>
  );
}

function slopeWorkingOf(draft: SlopeDraft): SlopeWorking | null {
  if (draft.kind === 'level') return draft.degrees === null ? null : { kind: 'level', degrees: draft.degrees };
  const { riseFt, runFt } = draft;
  return riseFt === null || runFt === null ? null : { kind: 'rise-run', riseFt, runFt };
}

function TypedSlope({ property, zone }: SlopeProps) {
  const words = useFormat();
  const percent = 100 * degreesToGrade(quantity<'deg'>(zone.slopeDeg));
  return (
    <Field label="Slope" note={`${words.number(percent, 1)} %; 20 % or 1:5 can be typed too`}>
      <QuantityInput
        kind="slope"
        label={`Slope of ${zone.name}, degrees or percent`}
        value={zone.slopeDeg}
        onCommit={(value) => putZone(property, withSlope(zone, value ?? 0), 'Change slope')}
      />
    </Field>
  );
}

type RiseRunProps = {
  readonly draft: Extract<SlopeDraft, { readonly kind: 'rise-run' }>;
  readonly onChange: (draft: SlopeDraft) => Result<unknown>;
};

function RiseRun({ draft, onChange }: RiseRunProps) {
  return (
    <>
      <Field label="Rise">
        <QuantityInput
          kind="length"
          label="Rise"
          value={draft.riseFt}
          onCommit={(riseFt) => onChange({ ...draft, riseFt })}
        />
      </Field>
      <Field label="Run" note="along level ground">
        <QuantityInput
          kind="length"
          label="Run"
          value={draft.runFt}
          positive
          onCommit={(runFt) => onChange({ ...draft, runFt })}
        />
      </Field>
    </>
  );
}

function SlopeLine({ draft }: { readonly draft: SlopeDraft }) {
  const { system } = useFormat();
  const working = slopeWorkingOf(draft);
  const worked = working === null ? null : workedSlope(working, system);
  return (
    <output className="working">
      {worked?.ok === true ? (
        worked.value.lines.map((line) => <span key={line}>{line}</span>)
      ) : (
        <span className="quiet">{draft.kind === 'level' ? 'Enter the degrees.' : 'Enter rise and run.'}</span>
      )}
    </output>
  );
}
