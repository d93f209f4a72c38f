import { type KeyboardEvent, type PointerEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { PlanDay } from '../../core/plan/result/index.ts';
import type { Formatter } from '../format/index.ts';
import { ribbonWords } from '../texts/index.ts';
import { type DayEvent, dayEvents, eventIndexAt } from './day-events.ts';
import { type HomeRange, layoutRibbon, type RibbonLayout } from './layout.ts';
import { eventWords, momentWords } from './readout.ts';
import { Axis, Blocks, Cursor, Home, Lanes, Refills } from './ribbon-parts.tsx';

type RibbonProps = {
  readonly day: PlanDay;
  readonly words: Formatter;
  /** When the rig is home on 8 days of 10; null where nothing is known of it. */
  readonly homeRange: HomeRange | null;
  readonly cursorSec: number | null;
  readonly selectedStop: number | null;
  readonly onCursor: (sec: number | null) => void;
  readonly onStop: (stopNumber: number) => void;
};

/**
 * The levels ribbon: time from left to right, stops as blocks, below them every tank, hopper and stock as a falling and refilled
 * line. The cursor follows the pointer; from the keyboard the arrow keys step from event to event.
 */
export function LevelsRibbon({ day, words, homeRange, cursorSec, selectedStop, onCursor, onStop }: RibbonProps) {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 900, height: 240 });
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setSize({ width: element.clientWidth, height: element.clientHeight }));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const layout = useMemo(() => layoutRibbon(day, size.width, size.height, homeRange), [day, size, homeRange]);
  const events = useMemo(() => dayEvents(day), [day]);
  const at = cursorSec ?? day.startSec;

  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    const x = event.clientX - event.currentTarget.getBoundingClientRect().left + event.currentTarget.scrollLeft;
    onCursor(x < layout.scale.left ? null : Math.round(layout.scale.toSec(x)));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const next = nextMoment(event.key, events, at);
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    onCursor(next);
  };
  return (
    <div
      ref={box}
      className="ribbon"
      role="slider"
      tabIndex={0}
      aria-label={ribbonWords.ribbon.label(day.rigName)}
      aria-valuemin={layout.scale.startSec}
      aria-valuemax={layout.scale.endSec}
      aria-valuenow={at}
      aria-valuetext={momentWords(day, at, words)}
      data-subject="loads"
      onPointerMove={onPointerMove}
      onPointerDown={onPointerMove}
      onKeyDown={onKeyDown}
    >
      <Drawing
        layout={layout}
        day={day}
        words={words}
        homeRange={homeRange}
        events={events}
        cursorSec={cursorSec}
        selectedStop={selectedStop}
        onStop={onStop}
      />
    </div>
  );
}

/** The keys that `nextMoment` knows. */
export const RIBBON_KEYS = ['ArrowLeft', 'ArrowRight', 'Home', 'End', 'Escape'] as const;

/** The moment that a key leads to: null takes the cursor away, undefined is a key with another meaning. */
export function nextMoment(key: string, events: readonly DayEvent[], at: number): number | null | undefined {
  const index = eventIndexAt(events, at);
  const current = events[index];
  if (key === 'ArrowRight' || key === 'ArrowDown') return events.find((event) => event.sec > at)?.sec ?? at;
  if (key === 'ArrowLeft' || key === 'ArrowUp') {
    if (current !== undefined && current.sec < at) return current.sec;
    return events.findLast((event) => event.sec < at)?.sec ?? at;
  }
  if (key === 'Home') return events[0]?.sec ?? at;
  if (key === 'End') return events.at(-1)?.sec ?? at;
  if (key === 'Escape') return null;
  return undefined;
}

type DrawingProps = Omit<RibbonProps, 'onCursor'> & {
  readonly layout: RibbonLayout;
  readonly events: readonly DayEvent[];
};

function Drawing({ layout, day, words, homeRange, events, cursorSec, selectedStop, onStop }: DrawingProps) {
  return (
    <svg
      className="ribbon-drawing"
      width={layout.width}
      height={layout.height}
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      aria-hidden="true"
    >
      <defs>
        <pattern id="ribbon-break" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="ribbon-break-line" d="M0 0V5" />
        </pattern>
        <pattern id="ribbon-home" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
          <path className="ribbon-home-line" d="M0 0V6" />
        </pattern>
      </defs>
      <Axis layout={layout} words={words} />
      <Lanes layout={layout} words={words} />
      <Refills layout={layout} events={events} day={day} words={words} />
      <Blocks layout={layout} selectedStop={selectedStop} onStop={onStop} />
      <Home layout={layout} day={day} words={words} range={homeRange} />
      {cursorSec !== null && <Cursor layout={layout} sec={cursorSec} words={words} />}
    </svg>
  );
}

/** The last event before the cursor, in words; shown under the ribbon's title. */
export function cursorWords(day: PlanDay, cursorSec: number | null, words: Formatter): string {
  if (cursorSec === null) return '';
  const events = dayEvents(day);
  const event = events[eventIndexAt(events, cursorSec)];
  return event === undefined ? '' : eventWords(event, words);
}
