import { useEffect, useRef } from 'react';
import type { Draft } from '../../../core/sketch/index.ts';
import { draftOutline, isPlace } from '../../../core/sketch/index.ts';
import { CommandButton } from '../../commands/index.ts';
import {
  areaWords,
  draftFigures,
  goOnWithDraft,
  hasCrossings,
  pointAtMap,
  takeUpDraft,
  throwDraftAway,
  useCarry,
  useDraft,
  useFormat,
} from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Button } from '../../ui/index.ts';
import { asideWords, draftAdvice, draftTitle } from './draw-words.ts';

/** Over the map: what is being drawn, and what can be done with it. */
export function DrawBar() {
  const { draft, aside, found, asking } = useDraft();
  const carry = useCarry((state) => state.carry);
  if (draft !== null) {
    return (
      <section className="draw-bar" aria-label={drawWords.bar.drawnLabel}>
        {found ? <Found draft={draft} /> : asking ? <Asking draft={draft} /> : <Drawing draft={draft} />}
      </section>
    );
  }
  if (carry !== null) {
    return (
      <section className="draw-bar" aria-label={drawWords.bar.carriedLabel}>
        <strong>{carry.kind === 'move' ? drawWords.bar.moving : drawWords.bar.copying}</strong>
        <span className="quiet">{drawWords.bar.carryAdvice}</span>
        <CommandButton id="draw.back">{drawWords.bar.letGo}</CommandButton>
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
        <span className={crossed ? 'stop' : 'quiet'}>{crossed ? drawWords.bar.crossed : draftAdvice(draft)}</span>
      </div>
      {!isPlace(draft.purpose) && <output className="draw-area">{areaWords(figures, words)}</output>}
      {kept === 'failed' && <span className="stop">{drawWords.bar.notSaved}</span>}
      <span className="draw-bar-tools">
        <CommandButton id="edit.undo">{commonWords.undo}</CommandButton>
        <CommandButton id="draw.aside" tip={drawWords.bar.setAsideTip}>
          {drawWords.bar.setAside}
        </CommandButton>
        <CommandButton id="draw.throw-away">{drawWords.bar.throwAway}</CommandButton>
        {!isPlace(draft.purpose) && (
          <CommandButton id="draw.finish" look="main">
            {drawWords.bar.finish}
          </CommandButton>
        )}
      </span>
    </>
  );
}

function Found({ draft }: { readonly draft: Draft }) {
  const goOn = () => {
    goOnWithDraft();
    pointAtMap(draft.corners.at(-1) ?? null);
  };
  return (
    <>
      <div className="draw-bar-words">
        <strong>{drawWords.bar.unfinished(asideWords(draft))}</strong>
        <span className="quiet">{drawWords.bar.unfinishedNote}</span>
      </div>
      <span className="draw-bar-tools">
        <CommandButton id="draw.aside">{drawWords.bar.setAside}</CommandButton>
        <Button look="main" onPress={goOn}>
          {drawWords.bar.goOn}
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
        <strong>{drawWords.bar.throwAwayAsk(asideWords(draft))}</strong>
        <span className="quiet">{drawWords.bar.throwAwayNote}</span>
      </div>
      <span className="draw-bar-tools" ref={box}>
        <Button onPress={() => useDraft.setState({ asking: false })}>{drawWords.bar.keepIt}</Button>
        <Button look="danger" onPress={() => throwDraftAway(true)}>
          {drawWords.bar.throwAway}
        </Button>
      </span>
    </>
  );
}

function Aside({ aside }: { readonly aside: readonly Draft[] }) {
  return (
    <section className="draw-bar draw-aside" aria-label={drawWords.bar.setAside}>
      {aside.slice(0, 3).map((draft, index) => (
        // Two outlines that were set aside can be alike in all they say.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is all that tells them apart.
        <span key={index} className="draw-aside-item">
          <span>{drawWords.bar.setAsideOf(asideWords(draft))}</span>
          <Button label={drawWords.bar.goOnWith(asideWords(draft))} onPress={() => takeUpDraft(draft)}>
            {drawWords.bar.goOn}
          </Button>
        </span>
      ))}
      {aside.length > 3 && <span className="quiet">{commonWords.andMore(aside.length - 3)}</span>}
    </section>
  );
}
