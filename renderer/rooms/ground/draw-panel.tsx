import { EXCLUSION_KINDS } from '../../../core/book/index.ts';
import { type Draft, isPlace } from '../../../core/sketch/index.ts';
import { CommandButton } from '../../commands/index.ts';
import {
  adjustDraft,
  areaWords,
  draftFigures,
  editRing,
  fillHole,
  ringsOf,
  useDraft,
  useFormat,
} from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section } from '../../ui/index.ts';
import { draftTitle } from './draw-words.ts';
import { VertexTable } from './vertex-table.tsx';

/** What is being drawn, in figures, and as a table of sides that can be typed. */
export function DrawPanel({ draft }: { readonly draft: Draft }) {
  return (
    <div className="inspector draw-panel">
      <header className="inspector-head">
        <h2>{draftTitle(draft)}</h2>
      </header>
      {!isPlace(draft.purpose) && <Figures draft={draft} />}
      <Settings draft={draft} />
      {!isPlace(draft.purpose) && <VertexTable draft={draft} />}
    </div>
  );
}

function Figures({ draft }: { readonly draft: Draft }) {
  const words = useFormat();
  const dragging = useDraft((state) => state.dragging);
  const figures = draftFigures(draft, dragging ?? undefined);
  const { lastEdgeFt, perimeterFt, likelyErrorSqFt } = figures;
  return (
    <dl className="figures">
      <div>
        <dd>{figures.areaSqFt === null ? drawWords.panel.noAreaYet : words.area(figures.areaSqFt)}</dd>
        <dt>
          {likelyErrorSqFt === null
            ? drawWords.panel.inside
            : drawWords.panel.insideWithin(words.area(likelyErrorSqFt))}
        </dt>
      </div>
      <div>
        <dd>{lastEdgeFt === null ? drawWords.panel.noSideYet : words.length(perimeterFt)}</dd>
        <dt>{lastEdgeFt === null ? commonWords.round : drawWords.panel.roundLastSide(words.length(lastEdgeFt))}</dt>
      </div>
    </dl>
  );
}

/** Characters of a name. */
const MOST_NAME = 200;
const KIND_OPTIONS = EXCLUSION_KINDS.map((value) => ({ value, words: value }));

/** Which ring of an outline with holes is edited. */
function Rings({ draft }: { readonly draft: Draft }) {
  const rings = ringsOf(draft);
  const { base } = draft;
  if (base === undefined || rings.length < 2) return null;
  const isOpen = ({ place }: (typeof rings)[number]) =>
    place.polygon === base.place.polygon && place.ring === base.place.ring;
  return (
    <div className="draw-actions">
      {rings.map((ring) => (
        <Button key={ring.name} pressed={isOpen(ring)} onPress={() => !isOpen(ring) && editRing(ring.place)}>
          {ring.name}
        </Button>
      ))}
      {base.place.ring > 0 && (
        <Button look="danger" tip={drawWords.panel.fillHoleTip} onPress={fillHole}>
          {drawWords.panel.fillHole}
        </Button>
      )}
    </div>
  );
}

function Settings({ draft }: { readonly draft: Draft }) {
  const { purpose } = draft;
  const outline = !isPlace(purpose);
  return (
    <Section title={drawWords.panel.drawing}>
      <Rings draft={draft} />
      {purpose.kind === 'exclusion' && (
        <Field label={commonWords.kind}>
          <Choice
            label={drawWords.panel.kindOfExclusion}
            value={purpose.what}
            options={KIND_OPTIONS}
            onChoose={(what) => adjustDraft({ purpose: { ...purpose, what } })}
          />
        </Field>
      )}
      {purpose.kind === 'avoid' && (
        <Field label={drawWords.panel.whatItIs} note={drawWords.panel.avoidNote}>
          <DraftInput
            label={drawWords.panel.avoidLabel}
            text={purpose.name}
            placeholder={drawWords.panel.avoidPlaceholder}
            onCommit={(typed) => {
              adjustDraft({ purpose: { ...purpose, name: typed.slice(0, MOST_NAME) } });
              return { ok: true, value: true };
            }}
          />
        </Field>
      )}
      {purpose.kind === 'gate' && (
        <Field label={drawWords.panel.clearWidth}>
          <QuantityInput
            kind="width"
            label={drawWords.panel.widthOfGate}
            value={purpose.clearWidthIn}
            positive
            onCommit={(value) => {
              adjustDraft({ purpose: { ...purpose, clearWidthIn: value ?? purpose.clearWidthIn } });
              return { ok: true, value: true };
            }}
          />
        </Field>
      )}
      {purpose.kind === 'zone' && (
        <Field label={drawWords.panel.edgeError} note={draft.base === undefined ? drawWords.panel.edgeErrorNote : ''}>
          <QuantityInput
            kind="length"
            label={drawWords.panel.edgeErrorLabel}
            value={draft.outlineErrorFt ?? null}
            optional
            onCommit={(value) => {
              adjustDraft({ outlineErrorFt: value ?? undefined } as Partial<Draft>);
              return { ok: true, value: true };
            }}
          />
        </Field>
      )}
      {outline && (
        <div className="draw-actions">
          <CommandButton id="draw.square" tip={drawWords.panel.squareUpTip}>
            {drawWords.panel.squareUp}
          </CommandButton>
          <CommandButton id="draw.finish" look="main">
            {drawWords.panel.finish}
          </CommandButton>
        </div>
      )}
    </Section>
  );
}

/** What is drawn, told as it changes, for those who do not see it. */
export function DrawLive() {
  const draft = useDraft((state) => state.draft);
  const words = useFormat();
  const text = draft === null || draft.corners.length === 0 ? '' : liveText(draft, words);
  return (
    <div className="only-spoken" role="status" aria-live="polite" aria-label={drawWords.panel.figuresLabel}>
      {text}
    </div>
  );
}

function liveText(draft: Draft, words: ReturnType<typeof useFormat>): string {
  const figures = draftFigures(draft);
  const side = figures.lastEdgeFt === null ? '' : drawWords.panel.lastSide(words.length(figures.lastEdgeFt));
  const area = figures.areaSqFt === null ? '' : `, ${areaWords(figures, words)}`;
  return drawWords.panel.spoken(draft.corners.length, side, area);
}
