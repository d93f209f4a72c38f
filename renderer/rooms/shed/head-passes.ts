import { type Head, type HeadPasses, MARKS, SIDES } from '../../../core/book/index.ts';
import { machinesWords } from '../../texts/shed/index.ts';
import type { Column } from './column.tsx';

/**
 * What a new head is driven by until somebody knows better: 4 in of overlap, one pass round the edge, 4 s a turn, hand trim from
 * 100 ft2 on. Common practice, no source.
 */
export const NEW_PASSES: HeadPasses = { overlapFt: 1 / 3, trimPasses: 1, turnSec: 4, handTrimFromSqFt: 100 };

const isUndriven = ({ passes }: Head): boolean => passes === undefined;

const withPasses = (head: Head, change: Partial<HeadPasses>): Head =>
  head.passes === undefined ? head : { ...head, passes: { ...head.passes, ...change } };

/** The same without one of its members. */
function without(head: Head, name: keyof HeadPasses): Head {
  if (head.passes === undefined) return head;
  const { [name]: _, ...passes } = head.passes;
  return { ...head, passes: passes as HeadPasses };
}

const NONE = 'none';
const orNone = (values: readonly string[]) => [NONE, ...values].map((value) => ({ value, words: value }));

/** How a head is driven over a lawn. Without it the head is reckoned from its field efficiency. */
export const passColumns: readonly Column<Head>[] = [
  {
    kind: 'flag',
    label: machinesWords.head.byPasses,
    get: (h) => h.passes !== undefined,
    set: (h, on) => {
      const { passes = NEW_PASSES, ...head } = h;
      return on ? { ...head, passes } : head;
    },
  },
  {
    kind: 'figure',
    figure: 'length',
    label: machinesWords.head.overlap,
    hiddenFor: isUndriven,
    get: (h) => h.passes?.overlapFt ?? null,
    set: (h, overlapFt) => withPasses(h, { overlapFt }),
  },
  {
    kind: 'figure',
    figure: 'whole',
    label: machinesWords.head.trimPasses,
    hiddenFor: isUndriven,
    most: 10,
    get: (h) => h.passes?.trimPasses ?? null,
    set: (h, trimPasses) => withPasses(h, { trimPasses }),
  },
  {
    kind: 'figure',
    figure: 'length',
    label: machinesWords.head.trimSwath,
    hiddenFor: isUndriven,
    positive: true,
    get: (h) => h.passes?.trimSwathFt ?? null,
    set: (h, trimSwathFt) => withPasses(h, { trimSwathFt }),
    unset: (h) => without(h, 'trimSwathFt'),
  },
  {
    kind: 'flag',
    label: machinesWords.head.cornersDrivenOut,
    hiddenFor: isUndriven,
    get: (h) => h.passes?.squareCorners ?? false,
    set: (h, on) => (on ? withPasses(h, { squareCorners: true }) : without(h, 'squareCorners')),
  },
  {
    kind: 'figure',
    figure: 'number',
    label: machinesWords.head.secondsATurn,
    hiddenFor: isUndriven,
    get: (h) => h.passes?.turnSec ?? null,
    set: (h, turnSec) => withPasses(h, { turnSec }),
  },
  {
    kind: 'figure',
    figure: 'speed',
    label: machinesWords.head.speedBetweenPasses,
    hiddenFor: isUndriven,
    positive: true,
    get: (h) => h.passes?.transitMph ?? null,
    set: (h, transitMph) => withPasses(h, { transitMph }),
    unset: (h) => without(h, 'transitMph'),
  },
  {
    kind: 'text',
    label: machinesWords.head.sectionsFt,
    hiddenFor: (h) => isUndriven(h) || h.purpose !== 'spray',
    get: (h) => (h.passes?.sectionsFt ?? []).join(', '),
    set: (h, text) => {
      const widths = text.split(/[,;\s]+/).filter((each) => each !== '');
      if (widths.length === 0) return without(h, 'sectionsFt');
      const sectionsFt = widths.map(Number);
      return sectionsFt.every((each) => each > 0 && Number.isFinite(each)) ? withPasses(h, { sectionsFt }) : h;
    },
  },
  {
    kind: 'choice',
    label: machinesWords.head.shieldedSide,
    hiddenFor: isUndriven,
    options: () => orNone(SIDES),
    get: (h) => h.passes?.shieldedSide ?? NONE,
    set: (h, text) => {
      const shieldedSide = SIDES.find((each) => each === text);
      return shieldedSide === undefined ? without(h, 'shieldedSide') : withPasses(h, { shieldedSide });
    },
  },
  {
    kind: 'figure',
    figure: 'slope',
    label: machinesWords.head.upAndDownFrom,
    hiddenFor: isUndriven,
    most: 60,
    get: (h) => h.passes?.upAndDownFromDeg ?? null,
    set: (h, upAndDownFromDeg) => withPasses(h, { upAndDownFromDeg }),
    unset: (h) => without(h, 'upAndDownFromDeg'),
  },
  {
    kind: 'figure',
    figure: 'area',
    label: machinesWords.head.handTrimFrom,
    hiddenFor: isUndriven,
    get: (h) => h.passes?.handTrimFromSqFt ?? null,
    set: (h, handTrimFromSqFt) => withPasses(h, { handTrimFromSqFt }),
    unset: (h) => without(h, 'handTrimFromSqFt'),
  },
  {
    kind: 'choice',
    label: machinesWords.head.marker,
    hiddenFor: (h) => isUndriven(h) || h.purpose !== 'spray',
    options: () => orNone(MARKS),
    get: (h) => h.passes?.mark?.what ?? NONE,
    set: (h, text) => {
      const what = MARKS.find((each) => each === text);
      if (what === undefined) return without(h, 'mark');
      return withPasses(h, { mark: { what, flOzPer1000Ft: h.passes?.mark?.flOzPer1000Ft ?? 1 } });
    },
  },
  {
    kind: 'figure',
    figure: 'number',
    label: machinesWords.head.markerAmount,
    hiddenFor: (h) => h.passes?.mark === undefined,
    positive: true,
    get: (h) => h.passes?.mark?.flOzPer1000Ft ?? null,
    set: (h, flOzPer1000Ft) =>
      h.passes?.mark === undefined ? h : withPasses(h, { mark: { ...h.passes.mark, flOzPer1000Ft } }),
  },
];
