import { scaleLinear } from 'd3-scale';

/** Where a moment of the day lies on the ribbon, and back. Seconds after local midnight, pixels from the left edge. */
export type TimeScale = {
  readonly startSec: number;
  readonly endSec: number;
  readonly left: number;
  readonly right: number;
  readonly toX: (sec: number) => number;
  readonly toSec: (x: number) => number;
};

export type Tick = { readonly sec: number; readonly x: number };

const HALF_HOUR_SEC = 1800;
const STEPS_SEC = [900, 1800, 3600, 7200, 14400];
/** Least distance between two labelled hours, px. */
const TICK_ROOM_PX = 72;

/**
 * A scale whose ends lie on half hours around the day, so that the axis starts and ends with a label.
 *
 * @param startSec first moment shown
 * @param endSec last moment shown, later than `startSec`
 * @param left pixel of the start
 * @param right pixel of the end
 */
export function timeScale(startSec: number, endSec: number, left: number, right: number): TimeScale {
  const from = Math.floor(startSec / HALF_HOUR_SEC) * HALF_HOUR_SEC;
  const until = Math.max(Math.ceil(endSec / HALF_HOUR_SEC) * HALF_HOUR_SEC, from + HALF_HOUR_SEC);
  const scale = scaleLinear().domain([from, until]).range([left, right]).clamp(true);
  return {
    startSec: from,
    endSec: until,
    left,
    right,
    toX: (sec) => scale(sec),
    toSec: (x) => scale.invert(x),
  };
}

/** Labelled moments: as many as there is room for, on whole quarters, halves or hours. */
export function timeTicks(scale: TimeScale): readonly Tick[] {
  const perSec = (scale.right - scale.left) / (scale.endSec - scale.startSec);
  const step = STEPS_SEC.find((each) => each * perSec >= TICK_ROOM_PX) ?? 14400;
  const ticks: Tick[] = [];
  for (let sec = Math.ceil(scale.startSec / step) * step; sec <= scale.endSec; sec += step) {
    ticks.push({ sec, x: scale.toX(sec) });
  }
  return ticks;
}
