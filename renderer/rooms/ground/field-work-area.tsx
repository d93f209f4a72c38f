import { useState } from 'react';
import { err, ok, type Result } from '../../../core/base/index.ts';
import type { AreaWorking, Property, Zone } from '../../../core/book/index.ts';
import { workedArea } from '../../../core/field-work/index.ts';
import { measureOf, showError, showNews, useFormat } from '../../stores/index.ts';
import { fieldWorkWords } from '../../texts/ground/index.ts';
import { Choice, DraftInput, Field, QuantityInput } from '../../ui/index.ts';
import { type AreaDraft, blankDraft, draftOf, missingWords, workingOf } from './field-work-draft.ts';
import { OffsetsForm, RadiiForm, ShapesForm } from './field-work-forms.tsx';
import { putZone, withDrawnOver, withOptional, withOutlineError, withStatedArea, withWorking } from './zone-edits.ts';

type ZoneProps = { readonly property: Property; readonly zone: Zone };

type Way = 'drawn' | 'stated' | AreaWorking['kind'];
const WAYS: readonly { readonly value: Way; readonly words: string }[] = [
  { value: 'drawn', words: fieldWorkWords.area.fromOutline },
  { value: 'stated', words: fieldWorkWords.area.asStated },
  { value: 'shapes', words: fieldWorkWords.area.fromShapes },
  { value: 'offsets', words: fieldWorkWords.area.fromOffsets },
  { value: 'mean-radius', words: fieldWorkWords.area.fromRadii },
];

/** How the area of a zone is known, and what it is known from. */
export function AreaForm({ property, zone }: ZoneProps) {
  const [started, setStarted] = useState<AreaDraft | null>(null);
  const { shape } = zone;
  const stored = shape.kind === 'stated' && shape.working !== undefined ? draftOf(shape.working) : null;
  const draft = started ?? stored;
  const way: Way = draft?.kind ?? shape.kind;
  const choose = (next: Way) => {
    if (next === way) return;
    if (next === 'drawn') return showNews(fieldWorkWords.area.drawOutlineAdvice);
    if (next !== 'stated') return setStarted(blankDraft(next));
    setStarted(null);
    if (shape.kind === 'drawn' || shape.working !== undefined) asStated(property, zone);
  };
  const change = (next: AreaDraft): Result<unknown> => {
    const working = workingOf(next);
    if (working === null) {
      setStarted(next);
      return ok(null);
    }
    const worked = withWorking(zone, working);
    if (worked === null) {
      setStarted(next);
      return ok(null);
    }
    const done = putZone(property, worked, fieldWorkWords.area.change);
    if (done.ok) setStarted(null);
    return done;
  };
  return (
    <>
      <Field label={fieldWorkWords.area.known}>
        <Choice
          label={fieldWorkWords.area.knownOf(zone.name)}
          value={way}
          options={shape.kind === 'drawn' || way === 'drawn' ? WAYS : WAYS.slice(1)}
          onChoose={choose}
        />
      </Field>
      {draft?.kind === 'shapes' && <ShapesForm draft={draft} onChange={change} />}
      {draft?.kind === 'offsets' && <OffsetsForm draft={draft} onChange={change} />}
      {draft?.kind === 'mean-radius' && <RadiiForm draft={draft} onChange={change} />}
      {draft !== null && <Working draft={draft} />}
      {draft === null && shape.kind === 'stated' && <StatedForm property={property} zone={zone} />}
      {draft === null && shape.kind === 'drawn' && <OutlineForm property={property} zone={zone} />}
    </>
  );
}

/** The measured or worked-out figure stays, without what it came from. */
function asStated(property: Property, zone: Zone): void {
  const area = measureOf(property).zones.find((each) => each.zoneId === zone.id)?.areaSqFt ?? 0;
  const had = zone.shape.kind === 'drawn' ? 'outline' : fieldWorkWords.area.fieldWork;
  const done = putZone(
    property,
    withStatedArea(zone, area, fieldWorkWords.area.fromEarlier(had)),
    fieldWorkWords.area.setAside(had),
  );
  if (done.ok) showNews(fieldWorkWords.area.isSetAside(had, zone.name), true);
  else showError(done.error);
}

/** The arithmetic while it is typed, or what is still missing. */
function Working({ draft }: { readonly draft: AreaDraft }) {
  const { system } = useFormat();
  const working = workingOf(draft);
  const worked = working === null ? null : workedArea(working, system);
  return (
    <output className="working">
      {worked === null && <span className="quiet">{missingWords(draft)}</span>}
      {worked?.ok === false && (
        <span className="fault">
          {worked.error.detail} {worked.error.hint}
        </span>
      )}
      {worked?.ok === true && worked.value.lines.map((line) => <span key={line}>{line}</span>)}
    </output>
  );
}

function StatedForm({ property, zone }: ZoneProps) {
  const { shape } = zone;
  if (shape.kind !== 'stated') return null;
  const put = (areaSqFt: number, method: string) =>
    putZone(property, withStatedArea(zone, areaSqFt, method), fieldWorkWords.area.changeStated);
  return (
    <>
      <Field label={fieldWorkWords.area.area}>
        <QuantityInput
          kind="area"
          label={fieldWorkWords.area.statedOf(zone.name)}
          value={shape.areaSqFt}
          onCommit={(value) => put(value ?? 0, shape.method)}
        />
      </Field>
      <Field label={fieldWorkWords.area.source}>
        <DraftInput
          label={fieldWorkWords.area.sourceOf(zone.name)}
          text={shape.method}
          placeholder={fieldWorkWords.area.sourcePlaceholder}
          onCommit={(method) => put(shape.areaSqFt, method)}
        />
      </Field>
    </>
  );
}

function OutlineForm({ property, zone }: ZoneProps) {
  const { shape } = zone;
  if (shape.kind !== 'drawn') return null;
  return (
    <>
      <Field label={fieldWorkWords.area.drawnOver}>
        <DraftInput
          label={fieldWorkWords.area.drawnOverOf(zone.name)}
          text={shape.drawnOver ?? ''}
          placeholder={fieldWorkWords.area.drawnOverPlaceholder}
          onCommit={(text) =>
            text.length > 200
              ? err(
                  'quantity-out-of-range',
                  fieldWorkWords.area.drawnOverPlace,
                  fieldWorkWords.area.tooLong,
                  fieldWorkWords.area.tooLongAdvice,
                )
              : putZone(property, withDrawnOver(zone, text), fieldWorkWords.area.changeDrawnOver)
          }
        />
      </Field>
      <Field label={fieldWorkWords.area.edgeError} note={fieldWorkWords.area.edgeErrorNote}>
        <QuantityInput
          kind="length"
          label={fieldWorkWords.area.edgeErrorOf(zone.name)}
          value={shape.outlineErrorFt ?? null}
          optional
          onCommit={(value) => putZone(property, withOutlineError(zone, value), fieldWorkWords.area.changeEdgeError)}
        />
      </Field>
      <StatedCompare property={property} zone={zone} />
    </>
  );
}

/** A figure from a card or the customer beside the drawn one. */
function StatedCompare({ property, zone }: ZoneProps) {
  const words = useFormat();
  const measured = measureOf(property).zones.find((each) => each.zoneId === zone.id)?.areaSqFt ?? null;
  const { statedAreaSqFt } = zone;
  const note =
    statedAreaSqFt === undefined || measured === null
      ? fieldWorkWords.area.fromCard
      : fieldWorkWords.area.drawnIs(
          words.area(Math.abs(measured - statedAreaSqFt)),
          measured < statedAreaSqFt ? fieldWorkWords.area.less : fieldWorkWords.area.more,
          words.number(Math.abs(measured / statedAreaSqFt - 1) * 100, 1),
        );
  return (
    <Field label={fieldWorkWords.area.toCompare} note={note}>
      <QuantityInput
        kind="area"
        label={fieldWorkWords.area.toCompareOf(zone.name)}
        value={statedAreaSqFt ?? null}
        optional
        positive
        onCommit={(value) =>
          putZone(
            property,
            withOptional<Zone, 'statedAreaSqFt'>(zone, 'statedAreaSqFt', value),
            fieldWorkWords.area.changeToCompare,
          )
        }
      />
    </Field>
  );
}
