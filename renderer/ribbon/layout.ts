import type { LevelLine, PlanDay } from '../../core/plan/result/index.ts';
import { homeSec } from './day-events.ts';
import { type TimeScale, timeScale } from './time-scale.ts';

export type Block = {
  readonly kind: 'stop' | 'break' | 'fill-point' | 'yard';
  readonly startSec: number;
  readonly x: number;
  readonly width: number;
  readonly label: string;
  readonly title: string;
  readonly stopNumber: number;
};

export type Lane = { readonly line: LevelLine; readonly top: number; readonly height: number };

export type RibbonLayout = {
  readonly width: number;
  readonly height: number;
  readonly scale: TimeScale;
  readonly axisY: number;
  readonly blockTop: number;
  readonly blockHeight: number;
  readonly blocks: readonly Block[];
  readonly lanes: readonly Lane[];
  readonly homeX: number;
};

export const LABEL_WIDTH = 132;
const RIGHT_MARGIN = 84;
const AXIS_HEIGHT = 22;
const BLOCK_HEIGHT = 24;
const BLOCK_GAP = 8;
const LANE_GAP = 8;
const LEAST_LANE = 22;
const MOST_LANE = 54;
const BOTTOM_MARGIN = 6;
/** Tanks and hoppers work; nurse tanks and bags stand behind them and are drawn lower. */
const WEIGHT = { tank: 1, dry: 0.8, nurse: 0.7, bags: 0.7 } as const;

/**
 * Places everything of one day on the ribbon.
 *
 * @param width drawing width, px
 * @param roomPx height there is; lanes shrink to fit, but never below what can be read
 */
export function layoutRibbon(day: PlanDay, width: number, roomPx: number): RibbonLayout {
  const scale = timeScale(day.startSec, day.endSec, LABEL_WIDTH, Math.max(LABEL_WIDTH + 100, width - RIGHT_MARGIN));
  const blockTop = AXIS_HEIGHT;
  const lanesTop = blockTop + BLOCK_HEIGHT + BLOCK_GAP;
  const lanes = layoutLanes(day.levels, lanesTop, roomPx - lanesTop - BOTTOM_MARGIN);
  const last = lanes.at(-1);
  return {
    width,
    height: (last === undefined ? lanesTop : last.top + last.height) + BOTTOM_MARGIN,
    scale,
    axisY: AXIS_HEIGHT - 8,
    blockTop,
    blockHeight: BLOCK_HEIGHT,
    blocks: layoutBlocks(day, scale),
    lanes,
    homeX: scale.toX(homeSec(day)),
  };
}

function layoutLanes(lines: readonly LevelLine[], top: number, roomPx: number): readonly Lane[] {
  const weight = lines.reduce((sum, line) => sum + WEIGHT[line.kind], 0);
  const free = roomPx - LANE_GAP * Math.max(0, lines.length - 1);
  let y = top;
  return lines.map((line) => {
    const share = weight > 0 ? (free * WEIGHT[line.kind]) / weight : 0;
    const height = Math.min(MOST_LANE * WEIGHT[line.kind], Math.max(LEAST_LANE, share));
    const lane = { line, top: y, height };
    y += height + LANE_GAP;
    return lane;
  });
}

function layoutBlocks(day: PlanDay, scale: TimeScale): readonly Block[] {
  const block = (kind: Block['kind'], startSec: number, endSec: number, label: string, title: string, number = 0) => ({
    kind,
    startSec,
    x: scale.toX(startSec),
    width: Math.max(1, scale.toX(endSec) - scale.toX(startSec)),
    label,
    title,
    stopNumber: number,
  });
  const stops = day.stops.map((stop) =>
    block('stop', stop.arriveSec, stop.leaveSec, String(stop.number), stop.name, stop.number),
  );
  const others = day.activities.flatMap((activity) => {
    const { startSec, endSec } = activity;
    if (endSec <= startSec) return [];
    if (activity.kind === 'break') return [block('break', startSec, endSec, 'break', 'Break')];
    if (activity.kind === 'refill' && activity.fillPointId !== '') {
      return [block('fill-point', startSec, endSec, 'fill', 'Visit to a fill point')];
    }
    if (activity.kind === 'morning') return [block('yard', startSec, endSec, 'load', 'Loading before the start')];
    if (activity.kind === 'evening') return [block('yard', startSec, endSec, '', 'Rinse and records')];
    return [];
  });
  return [...stops, ...others].sort((left, right) => left.startSec - right.startSec);
}
