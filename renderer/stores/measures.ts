import { create } from 'zustand';
import type { Book, Property } from '../../core/book/index.ts';
import { measureProperty, type PropertyMeasure } from '../../core/measure/index.ts';

const known = new WeakMap<Property, PropertyMeasure>();

/** The measure of a property, kept for as long as the property stays the same object. */
export function measureOf(property: Property): PropertyMeasure {
  const before = known.get(property);
  if (before !== undefined) return before;
  const measure = measureProperty(property);
  known.set(property, measure);
  return measure;
}

/** The measure where it is known already; null where it would have to be worked out. */
export function knownMeasure(property: Property): PropertyMeasure | null {
  return known.get(property) ?? null;
}

type MeasureState = {
  readonly done: number;
  readonly total: number;
  /** Ground for treatment of the lawns measured so far, ft2. */
  readonly treatableSqFt: number;
  /** Measure issues that are errors or warnings, so far. */
  readonly attention: number;
};

/** How far measuring has come. Figures of single lawns are asked for by `measureOf`. */
export const useMeasures = create<MeasureState>(() => ({ done: 0, total: 0, treatableSqFt: 0, attention: 0 }));

/** Time for one part of the work, so that the window stays quick, ms. */
const SLICE_MS = 12;
/** Least time between two reports of how far it is, ms. */
const TELL_MS = 90;
let run = 0;

/** Measures every lawn of a book in short parts between which the window can draw. A newer call ends the older one. */
export function measureInBackground(book: Book | null): void {
  run += 1;
  const mine = run;
  const properties = book?.properties ?? [];
  let index = 0;
  let treatableSqFt = 0;
  let attention = 0;
  let told = Number.NEGATIVE_INFINITY;
  const part = () => {
    if (mine !== run) return;
    const until = performance.now() + SLICE_MS;
    while (index < properties.length && performance.now() < until) {
      const property = properties[index];
      index += 1;
      if (property === undefined) continue;
      const measure = measureOf(property);
      treatableSqFt += measure.treatableSqFt ?? 0;
      attention += measure.issues.some((each) => each.severity !== 'note') ? 1 : 0;
    }
    const ended = index >= properties.length;
    const now = performance.now();
    if (ended || now - told >= TELL_MS) {
      told = now;
      useMeasures.setState({ done: index, total: properties.length, treatableSqFt, attention });
    }
    if (!ended) afterDrawing(part);
  };
  part();
}

function afterDrawing(work: () => void): void {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    work();
  };
  port2.postMessage(null);
}
