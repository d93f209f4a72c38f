import { EXCLUSION_KINDS } from '../../../core/book/index.ts';
import { type Draft, isPlace } from '../../../core/sketch/index.ts';
import {
  adjustDraft,
  areaWords,
  draftFigures,
  editRing,
  fillHole,
  finishDrawing,
  ringsOf,
  squareDraft,
  useDraft,
  useFormat,
} from '../../stores/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section } from '../../ui/index.ts';
import { whyNotFinish } from './draw-bar.tsx';
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
        <dd>{figures.areaSqFt === null ? 'no area yet' : words.area(figures.areaSqFt)}</dd>
        <dt>{likelyErrorSqFt === null ? 'inside' : `inside, ± ${words.area(likelyErrorSqFt)}`}</dt>
      </div>
      <div>
        <dd>{lastEdgeFt === null ? 'no side yet' : words.length(perimeterFt)}</dd>
        <dt>{lastEdgeFt === null ? 'round' : `round; last side ${words.length(lastEdgeFt)}`}</dt>
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
        <Button look="danger" tip="The hole is turf again" onPress={fillHole}>
          Fill this hole
        </Button>
      )}
    </div>
  );
}

function Settings({ draft }: { readonly draft: Draft }) {
  const { purpose } = draft;
  const outline = !isPlace(purpose);
  return (
    <Section title="Drawing">
      <Rings draft={draft} />
      {purpose.kind === 'exclusion' && (
        <Field label="kind">
          <Choice
            label="Kind of what is kept out"
            value={purpose.what}
            options={KIND_OPTIONS}
            onChoose={(what) => adjustDraft({ purpose: { ...purpose, what } })}
          />
        </Field>
      )}
      {purpose.kind === 'avoid' && (
        <Field label="what it is" note="trucks drive round it, in every plan">
          <DraftInput
            label="What is to be driven round"
            text={purpose.name}
            placeholder="school street, market"
            onCommit={(typed) => {
              adjustDraft({ purpose: { ...purpose, name: typed.slice(0, MOST_NAME) } });
              return { ok: true, value: true };
            }}
          />
        </Field>
      )}
      {purpose.kind === 'gate' && (
        <Field label="clear width">
          <QuantityInput
            kind="width"
            label="Clear width of the new gate"
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
        <Field label="edge may be out by" note={draft.base === undefined ? 'assumed until you know better' : ''}>
          <QuantityInput
            kind="length"
            label="How far the edge may be out"
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
          <Button
            whyNot={draft.corners.length < 3 ? 'Set three corners first' : null}
            tip="Turn nearly right angles into right ones (Q)"
            onPress={squareDraft}
          >
            Square up
          </Button>
          <Button look="main" whyNot={whyNotFinish(draft)} onPress={() => finishDrawing()}>
            Finish
          </Button>
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
    <div className="only-spoken" role="status" aria-live="polite" aria-label="Figures of the outline">
      {text}
    </div>
  );
}

function liveText(draft: Draft, words: ReturnType<typeof useFormat>): string {
  const figures = draftFigures(draft);
  const side = figures.lastEdgeFt === null ? '' : `, last side ${words.length(figures.lastEdgeFt)}`;
  const area = figures.areaSqFt === null ? '' : `, ${areaWords(figures, words)}`;
  return `${draft.corners.length} corners${side}${area}`;
}
