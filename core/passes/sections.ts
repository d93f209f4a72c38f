import { groundUnder, type Interval, intervalsIn } from './lanes.ts';
import type { Sides } from './sides.ts';
import type { Strip, Strips } from './strips.ts';
import type { OpenSection } from './types.ts';

/** A section that lies within a neighbour's band but for this much counts as inside it, metres. */
const TOUCH_M = 0.001;

/** Where the sections of a boom are open along every swath of a frame, driven up and driven down the frame's first axis. */
export type Openings = {
  readonly onward: readonly (readonly OpenSection[])[];
  readonly back: readonly (readonly OpenSection[])[];
};

/**
 * Openings where each section is shut by itself over ground that is treated already: by the trim passes, or by the swath in the
 * lane below where the section lies wholly in the band that both share. Which of two neighbours is driven first makes no
 * difference to the sum. A section over any untreated ground is open in its whole width.
 * @param bare sides of the untreated ground in the frame of the swaths
 * @param sectionsM widths of the sections from left to right, metres
 */
export function openingsOf(bare: Sides, strips: Strips, sectionsM: readonly number[]): Openings {
  const last = sectionsM.length - 1;
  const onward = fromLowSide(bare, strips, sectionsM.toReversed());
  const back = fromLowSide(bare, strips, sectionsM);
  return {
    onward: onward.map((open) => open.map((each) => ({ ...each, section: last - each.section }))),
    back: back.map((open, index) => open.map((each) => turned(each, strips.strips[index]))),
  };
}

/** The same opening seen from the other end of the swath. */
function turned(open: OpenSection, strip: Strip | undefined): OpenSection {
  const lengthM = strip === undefined ? 0 : strip.to - strip.from;
  return { section: open.section, fromM: lengthM - open.toM, toM: lengthM - open.fromM };
}

/** Openings with the sections counted from the low side of the frame, metres from the low end of the swath. */
function fromLowSide(
  bare: Sides,
  { lanes, strips }: Strips,
  sectionsM: readonly number[],
): readonly (readonly OpenSection[])[] {
  const openings: OpenSection[][] = strips.map(() => []);
  const byLane: Strip[][] = Array.from({ length: lanes.count }, () => []);
  for (const strip of strips) byLane[strip.lane]?.push(strip);
  let low = -lanes.widthM / 2;
  for (const [section, widthM] of sectionsM.entries()) {
    const high = low + widthM;
    const under = groundUnder({ ...lanes, firstM: lanes.firstM + (low + high) / 2, widthM }, bare).any;
    const isShared = high <= lanes.widthM / 2 - lanes.stepM + TOUCH_M;
    for (const [index, strip] of strips.entries()) {
      const below = isShared ? (byLane[strip.lane - 1] ?? []) : [];
      for (const [from, to] of less(clip(intervalsIn(under, strip.lane), strip), below)) {
        openings[index]?.push({ section, fromM: from - strip.from, toM: to - strip.from });
      }
    }
    low = high;
  }
  return openings;
}

function clip(intervals: readonly Interval[], strip: Strip): readonly Interval[] {
  return intervals.flatMap(([from, to]): readonly Interval[] => {
    const start = Math.max(from, strip.from);
    const end = Math.min(to, strip.to);
    return end > start ? [[start, end]] : [];
  });
}

function less(intervals: readonly Interval[], others: readonly Strip[]): readonly Interval[] {
  let rest = intervals;
  for (const other of others) {
    rest = rest.flatMap(([from, to]): readonly Interval[] => [
      ...(Math.min(to, other.from) > from ? [[from, Math.min(to, other.from)] as const] : []),
      ...(to > Math.max(from, other.to) ? [[Math.max(from, other.to), to] as const] : []),
    ]);
  }
  return rest;
}
