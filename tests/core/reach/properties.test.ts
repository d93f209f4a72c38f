import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Machine } from '../../../core/book/index.ts';
import { methodsFor, reach } from '../../../core/reach/index.ts';
import { ask, byId, type Change, sampleBook } from './sample.ts';

const book = sampleBook();
const everyMethod = book.treatments.flatMap((treatment) =>
  methodsFor(book, treatment).map((method) => ({ method, treatmentId: treatment.id })),
);
const inches = fc.double({ min: 20, max: 60, noNaN: true });
const site = fc.record({
  task: fc.constantFrom(...everyMethod),
  widths: fc.array(inches, { minLength: 1, maxLength: 3 }),
  slopeDeg: fc.double({ min: 0, max: 25, noNaN: true }),
  farthestFt: fc.double({ min: 0, max: 150, noNaN: true }),
  noTrailer: fc.boolean(),
  wetGround: fc.boolean(),
  wetLimitLb: fc.option(fc.double({ min: 300, max: 1200, noNaN: true }), { nil: undefined }),
  rigId: fc.constantFrom('ash', 'bay', null),
});
type Site = typeof site extends fc.Arbitrary<infer Value> ? Value : never;

function change(given: Site): Change {
  const gates = given.widths.map((clearWidthIn, index) => ({
    id: `g${index}`,
    name: `G${index}`,
    clearWidthIn,
    locked: false,
  }));
  const firm = { slopeDeg: given.slopeDeg, gateIds: gates.map((each) => each.id) };
  return {
    book,
    property: { gates, noTrailer: given.noTrailer },
    zone: given.wetLimitLb === undefined ? firm : { ...firm, wetLimitLb: given.wetLimitLb },
    farthestFt: given.farthestFt,
    wetGround: given.wetGround,
    rig: given.rigId === null ? null : byId(book.rigs, given.rigId),
  };
}

function answer(given: Site, machines: readonly Machine[] = book.machines) {
  return reach(ask(given.task.method, given.task.treatmentId, { ...change(given), book: { ...book, machines } }));
}

it('no change for the better turns a yes into a no', () => {
  fc.assert(
    fc.property(site, fc.double({ min: 0, max: 20, noNaN: true }), (given, more) => {
      if (!answer(given).can) return;
      const better: readonly Site[] = [
        { ...given, widths: given.widths.map((each) => each + more) },
        { ...given, widths: given.widths.slice(1) },
        { ...given, slopeDeg: Math.max(0, given.slopeDeg - more) },
        { ...given, farthestFt: Math.max(0, given.farthestFt - more) },
        { ...given, wetLimitLb: given.wetLimitLb === undefined ? undefined : given.wetLimitLb + more },
        { ...given, wetGround: false },
        { ...given, noTrailer: false },
        { ...given, rigId: null },
      ];
      for (const each of better) expect(answer(each).can).toBe(true);
    }),
    { numRuns: 400 },
  );
});

it('a machine narrower in transit is never the worse for it', () => {
  fc.assert(
    fc.property(site, fc.double({ min: 0, max: 30, noNaN: true }), (given, less) => {
      const slim = book.machines.map((each) => ({ ...each, transitWidthIn: each.transitWidthIn - less }));
      expect(Number(answer(given, slim).can)).toBeGreaterThanOrEqual(Number(answer(given).can));
    }),
  );
});

it('yes and no never share a reason, and there are always words', () => {
  fc.assert(
    fc.property(site, (given) => {
      const found = answer(given);
      expect(found.can).toBe(found.reason === 'fits' || found.reason === 'gate-tight');
      expect(found.words.length).toBeGreaterThan(0);
      if (found.reason === 'gate-tight') expect(found.tight).toBe(true);
    }),
  );
});
