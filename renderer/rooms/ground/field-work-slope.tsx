import { useState } from 'react';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Property, SlopeWorking, Zone } from '../../../core/book/index.ts';
import { slopeWorkingWords, workedSlope } from '../../../core/field-work/index.ts';
import { degreesToGrade, quantity } from '../../../core/units/index.ts';
import { useFormat } from '../../stores/index.ts';
import { fieldWorkWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
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
  { value: 'entered', words: fieldWorkWords.slope.entered },
  { value: 'rise-run', words: fieldWorkWords.slope.riseOverRun },
  { value: 'level', words: fieldWorkWords.slope.phoneLevel },
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
      if (stored !== undefined) putZone(property, withSlope(zone, zone.slopeDeg), fieldWorkWords.slope.changeHow);
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
      return err('quantity-out-of-range', 'slope', fieldWorkWords.slope.tooSteep, fieldWorkWords.slope.tooSteepAdvice);
    const done = putZone(property, sloped, commonWords.changeSlope);
    if (done.ok) setStarted(null);
    return done;
  };
  const options =
    stored?.kind === 'elevation' ? [...WAYS, { value: 'elevation' as const, words: slopeWorkingWords(stored) }] : WAYS;
  return (
    <>
      <Field label={fieldWorkWords.slope.how}>
        <Choice label={fieldWorkWords.slope.howOf(zone.name)} value={way} options={options} onChoose={choose} />
      </Field>
      {draft === null && <TypedSlope property={property} zone={zone} />}
      {draft?.kind === 'rise-run' && <RiseRun draft={draft} onChange={change} />}
      {draft?.kind === 'level' && (
        <Field label={fieldWorkWords.slope.levelShows}>
          <QuantityInput
            kind="slope"
            label={fieldWorkWords.slope.levelLabel}
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
    <Field label={fieldWorkWords.slope.slope} note={fieldWorkWords.slope.percentNote(words.number(percent, 1))}>
      <QuantityInput
        kind="slope"
        label={fieldWorkWords.slope.slopeOf(zone.name)}
        value={zone.slopeDeg}
        onCommit={(value) => putZone(property, withSlope(zone, value ?? 0), commonWords.changeSlope)}
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
      <Field label={fieldWorkWords.slope.rise}>
        <QuantityInput
          kind="length"
          label={fieldWorkWords.slope.rise}
          value={draft.riseFt}
          onCommit={(riseFt) => onChange({ ...draft, riseFt })}
        />
      </Field>
      <Field label={fieldWorkWords.slope.run} note={fieldWorkWords.slope.runNote}>
        <QuantityInput
          kind="length"
          label={fieldWorkWords.slope.run}
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
        <span className="quiet">
          {draft.kind === 'level' ? fieldWorkWords.slope.enterDegrees : fieldWorkWords.slope.enterRiseRun}
        </span>
      )}
    </output>
  );
}
