import type { LevelLine, PlanActivity, PlanDay } from '../../core/plan/result/index.ts';
import { ribbonWords } from '../texts/index.ts';
import { homeSec } from './day-events.ts';
import { type TimeScale, timeScale } from './time-scale.ts';

export type Block = {
  readonly kind: 'stop' | 'break' | 'wait' | 'fill-point' | 'yard';
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
  /** From where to where the rig is home on 8 days of 10; null where nothing is known of it. */
  readonly homeBand: { readonly x: number; readonly width: number } | null;
};

/** Times of day that 1 and 9 days of 10 are home by. seconds */
export type HomeRange = { readonly sec10: number; readonly sec90: number };

export const LABEL_WIDTH = 132;
const RIGHT_MARGIN = 100;
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
export function layoutRibbon(
  day: PlanDay,
  width: number,
  roomPx: number,
  homeRange: HomeRange | null = null,
): RibbonLayout {
  const endSec = Math.max(day.endSec, homeRange?.sec90 ?? day.endSec);
  const scale = timeScale(day.startSec, endSec, LABEL_WIDTH, Math.max(LABEL_WIDTH + 100, width - RIGHT_MARGIN));
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
    homeBand: homeRange === null ? null : bandOf(scale, homeRange),
  };
}

function bandOf(scale: TimeScale, { sec10, sec90 }: HomeRange): RibbonLayout['homeBand'] {
  const x = scale.toX(sec10);
  return { x, width: Math.max(1, scale.toX(sec90) - x) };
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

/** A stretch of the day on the row of blocks, before it has its place. */
type Span = Omit<Block, 'x' | 'width'> & { readonly endSec: number };

function layoutBlocks(day: PlanDay, scale: TimeScale): readonly Block[] {
  const others = day.activities.flatMap(spansOf);
  const away = others.filter(({ kind }) => kind === 'break' || kind === 'wait' || kind === 'fill-point');
  const stops = day.stops.flatMap((stop) => {
    const { arriveSec: startSec, leaveSec: endSec, number: stopNumber, name: title } = stop;
    return aroundOthers({ kind: 'stop', startSec, endSec, label: String(stopNumber), title, stopNumber }, away);
  });
  return [...stops, ...others]
    .sort((left, right) => left.startSec - right.startSec)
    .map(({ endSec, ...span }) => {
      const x = scale.toX(span.startSec);
      return { ...span, x, width: Math.max(1, scale.toX(endSec) - x) };
    });
}

function spansOf(activity: PlanActivity): readonly Span[] {
  const { startSec, endSec } = activity;
  if (endSec <= startSec) return [];
  const span = (kind: Block['kind'], label: string, title: string) => [
    { kind, startSec, endSec, label, title, stopNumber: 0 },
  ];
  if (activity.kind === 'break') return span('break', 'break', ribbonWords.layout.break);
  if (activity.kind === 'wait') return span('wait', 'waits', ribbonWords.layout.waiting);
  if (activity.kind === 'refill' && activity.fillPointId !== '') {
    return span('fill-point', 'fill', ribbonWords.layout.fillPoint);
  }
  if (activity.kind === 'morning') return span('yard', 'load', ribbonWords.layout.loading);
  if (activity.kind === 'evening') return span('yard', '', ribbonWords.layout.evening);
  return [];
}

/** A stop that is broken off is drawn in pieces, so that nothing lies over it; the longest of them bears its number. */
function aroundOthers(stop: Span, others: readonly Span[]): readonly Span[] {
  let pieces: readonly Span[] = [stop];
  for (const { startSec, endSec } of others) {
    pieces = pieces.flatMap((piece) => {
      if (endSec <= piece.startSec || startSec >= piece.endSec) return [piece];
      const before = { ...piece, endSec: startSec };
      const after = { ...piece, startSec: endSec };
      return [before, after].filter((each) => each.endSec > each.startSec);
    });
  }
  const longest = Math.max(...pieces.map((piece) => piece.endSec - piece.startSec));
  const bearer = pieces.find((piece) => piece.endSec - piece.startSec === longest);
  return pieces.map((piece) => (piece === bearer ? piece : { ...piece, label: '' }));
}
