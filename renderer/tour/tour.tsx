import { type RefObject, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { measureOf, useBook, useCurrentPlan, useCurrentRound, useFormat, useImport, useView } from '../stores/index.ts';
import { tourWords } from '../texts/index.ts';
import { Button } from '../ui/index.ts';
import { type Box, placePanel, type Size } from './place-panel.ts';
import { leaveTour, showStep, useTour } from './tour-state.ts';
import { type TourStep, tourSteps } from './tour-steps.ts';
import { useAnchor } from './use-anchor.ts';

/** The tour, while it is taken: a panel beside what it is about. Everything else stays usable. */
export function Tour() {
  const at = useTour((state) => state.at);
  return at === null ? null : <Steps at={at} />;
}

function Steps({ at }: { readonly at: number }) {
  const steps = useSteps();
  const step = steps[at];
  useEffect(() => {
    // The book was closed, or its plan is gone: there is nothing to be shown any more.
    if (step === undefined) leaveTour();
  }, [step]);
  if (step === undefined) return null;
  return <StepPanel key={step.id} step={step} at={at} count={steps.length} />;
}

const NO_STEPS: readonly TourStep[] = [];

function useSteps(): readonly TourStep[] {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  const plan = useCurrentPlan()?.plan ?? null;
  const words = useFormat();
  return useMemo(
    () =>
      book === null || round === null || plan === null ? NO_STEPS : tourSteps({ book, round, plan, measureOf, words }),
    [book, round, plan, words],
  );
}

type PanelProps = { readonly step: TourStep; readonly at: number; readonly count: number };

function StepPanel({ step, at, count }: PanelProps) {
  const id = useId();
  const panel = useRef<HTMLElement>(null);
  const anchors = useRef(step.anchors);
  const clear = useRef(step.keepsClear === undefined ? step.anchors : [step.keepsClear]);
  const box = useAnchor(anchors.current);
  const shown = useRef(step);
  useEffect(() => {
    showStep(shown.current);
    panel.current?.querySelector<HTMLElement>('.button-main')?.focus({ preventScroll: true });
  }, []);
  useLeavingByEscape();
  const { size, room } = useSizes(panel);
  const whole = useAnchor(clear.current);
  const place = placePanel(whole, size, room, box);
  const isLast = at === count - 1;
  return (
    <>
      {box !== null && <Ring box={box} />}
      <section ref={panel} className="tour" style={place} aria-label={tourWords.region}>
        <p className="quiet small">{tourWords.count(at + 1, count)}</p>
        <h2 id={`${id}title`}>{step.title}</h2>
        <p id={`${id}says`}>{step.says}</p>
        <div className="tour-tools">
          <button
            type="button"
            className="button button-main"
            aria-describedby={`${id}title ${id}says`}
            onClick={() => (isLast ? leaveTour() : useTour.setState({ at: at + 1 }))}
          >
            {isLast ? tourWords.done : tourWords.next}
          </button>
          {at > 0 && <Button onPress={() => useTour.setState({ at: at - 1 })}>{tourWords.back}</Button>}
          {!isLast && (
            <Button look="quiet" onPress={leaveTour}>
              {tourWords.leave}
            </Button>
          )}
        </div>
      </section>
    </>
  );
}

/** How large the panel is and the window round it, followed as the window is sized: a panel that stayed where it was would be out of it. */
function useSizes(panel: RefObject<HTMLElement | null>): { readonly size: Size; readonly room: Size } {
  const [sizes, setSizes] = useState({ size: { width: 340, height: 220 }, room: { width: 0, height: 0 } });
  useLayoutEffect(() => {
    const measure = () => {
      const { offsetWidth: width, offsetHeight: height } = panel.current ?? { offsetWidth: 0, offsetHeight: 0 };
      setSizes({ size: { width, height }, room: { width: window.innerWidth, height: window.innerHeight } });
    };
    measure();
    window.addEventListener('resize', measure);
    return () => window.removeEventListener('resize', measure);
  }, [panel]);
  return sizes;
}

/** A frame round what is pointed at. It lets every press through. */
function Ring({ box: { left, top, width, height } }: { readonly box: Box }) {
  const style = { left: left - 4, top: top - 4, width: width + 8, height: height + 8 };
  return <div className="tour-ring" style={style} aria-hidden="true" />;
}

/** Esc leaves the tour, unless it belongs to a text that is being typed or to something that is open above the room. */
function useLeavingByEscape(): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented || isTaken(event.target)) return;
      event.preventDefault();
      event.stopPropagation();
      leaveTour();
    };
    window.addEventListener('keydown', onKeyDown, true);
    return () => window.removeEventListener('keydown', onKeyDown, true);
  }, []);
}

function isTaken(target: EventTarget | null): boolean {
  if (useView.getState().overlay !== null || useImport.getState().current.kind !== 'none') return true;
  if (document.querySelector('.popover, .modal') !== null) return true;
  return target instanceof HTMLElement && target.matches('input, textarea, select');
}
