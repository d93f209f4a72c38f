import { useEffect, useRef } from 'react';
import type { Draft } from '../../../core/sketch/index.ts';
import { cornersWanted, crossingsOf, draftOutline, isPlace } from '../../../core/sketch/index.ts';
import {
  areaWords,
  draftFigures,
  finishDrawing,
  goOnWithDraft,
  letGo,
  pointAtMap,
  setDraftAside,
  takeUpDraft,
  throwDraftAway,
  undoDraftStep,
  useCarry,
  useDraft,
  useFormat,
} from '../../stores/index.ts';
import { Button } from '../../ui/index.ts';
import { asideWords, draftAdvice, draftTitle } from './draw-words.ts';

/** Over the map: what is being drawn, and what can be done with it. */
export function DrawBar() {
  const { draft, aside, found, asking } = useDraft();
  const carry = useCarry((state) => state.carry);
  if (draft !== null) {
    return (
      <section className="draw-bar" aria-label="Being drawn">
        {found ? <Found draft={draft} /> : asking ? <Asking draft={draft} /> : <Drawing draft={draft} />}
      </section>
    );
  }
  if (carry !== null) {
    return (
      <section className="draw-bar" aria-label="Being carried">
        <strong>{carry.kind === 'move' ? 'Moving' : 'Copying'}</strong>
        <span className="quiet">Show where its middle goes</span>
        <Button onPress={letGo}>Let go</Button>
      </section>
    );
  }
  return aside.length === 0 ? null : <Aside aside={aside} />;
}

function Drawing({ draft }: { readonly draft: Draft }) {
  const words = useFormat();
  const dragging = useDraft((state) => state.dragging);
  const kept = useDraft((state) => state.kept);
  const figures = draftFigures(draft, dragging ?? undefined);
  const shape = dragging ?? draftOutline(draft);
  const crossed = hasCrossings(draft, shape);
  return (
    <>
      <div className="draw-bar-words">
        <strong>{draftTitle(draft)}</strong>
        <span className={crossed ? 'stop' : 'quiet'}>{crossed ? 'Sides cross at ✕' : draftAdvice(draft)}</span>
      </div>
      {!isPlace(draft.purpose) && <output className="draw-area">{areaWords(figures, words)}</output>}
      {kept === 'failed' && <span className="stop">not saved</span>}
      <span className="draw-bar-tools">
        <Button
          whyNot={draft.undo.length === 0 ? 'Nothing to take back in the outline' : null}
          tip="Take the last step back (Ctrl+Z)"
          onPress={undoDraftStep}
        >
          Undo
        </Button>
        <Button tip="Leave it unfinished for later (Esc)" onPress={setDraftAside}>
          Set aside
        </Button>
        <Button onPress={() => throwDraftAway()}>Throw away</Button>
        {!isPlace(draft.purpose) && (
          <Button look="main" whyNot={whyNotFinish(draft)} onPress={() => finishDrawing()}>
            Finish
          </Button>
        )}
      </span>
    </>
  );
}

/** Why the outline cannot be finished as it stands. */
export function whyNotFinish(draft: Draft): string | null {
  const wanted = cornersWanted(draft);
  if (wanted > 0) return `Set ${wanted} more first`;
  return hasCrossings(draft, draftOutline(draft)) ? 'Sides cross: move a corner so that they do not' : null;
}

function hasCrossings(draft: Draft, shape: ReturnType<typeof draftOutline>): boolean {
  return crossingsOf(shape, draft.base !== undefined || shape !== draft.corners).length > 0;
}

function Found({ draft }: { readonly draft: Draft }) {
  const goOn = () => {
    goOnWithDraft();
    pointAtMap(draft.corners.at(-1) ?? null);
  };
  return (
    <>
      <div className="draw-bar-words">
        <strong>Unfinished: {asideWords(draft)}</strong>
        <span className="quiet">It was being drawn when this book was last open. Nothing of it is lost.</span>
      </div>
      <span className="draw-bar-tools">
        <Button onPress={setDraftAside}>Set aside</Button>
        <Button look="main" onPress={goOn}>
          Go on
        </Button>
      </span>
    </>
  );
}

function Asking({ draft }: { readonly draft: Draft }) {
  const box = useRef<HTMLSpanElement>(null);
  useEffect(() => box.current?.querySelector('button')?.focus(), []);
  return (
    <>
      <div className="draw-bar-words" role="alert">
        <strong>Throw away {asideWords(draft)}?</strong>
        <span className="quiet">It cannot be taken back.</span>
      </div>
      <span className="draw-bar-tools" ref={box}>
        <Button onPress={() => useDraft.setState({ asking: false })}>Keep it</Button>
        <Button look="danger" onPress={() => throwDraftAway(true)}>
          Throw away
        </Button>
      </span>
    </>
  );
}

function Aside({ aside }: { readonly aside: readonly Draft[] }) {
  return (
    <section className="draw-bar draw-aside" aria-label="Set aside">
      {aside.slice(0, 3).map((draft, index) => (
        // Two outlines that were set aside can be alike in all they say.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is all that tells them apart.
        <span key={index} className="draw-aside-item">
          <span>Set aside: {asideWords(draft)}</span>
          <Button label={`Go on with ${asideWords(draft)}`} onPress={() => takeUpDraft(draft)}>
            Go on
          </Button>
        </span>
      ))}
      {aside.length > 3 && <span className="quiet">and {aside.length - 3} more</span>}
    </section>
  );
}
