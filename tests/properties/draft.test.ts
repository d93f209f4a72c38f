import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Position } from '../../core/book/index.ts';
import {
  applyDraft,
  beginDraft,
  type Corners,
  type Draft,
  type DraftStep,
  endDraftMerging,
  readDraft,
  redoDraft,
  undoDraft,
} from '../../core/sketch/index.ts';

const position = fc.tuple(
  fc.double({ min: -83.01, max: -83, noNaN: true }),
  fc.double({ min: 40, max: 40.01, noNaN: true }),
);
const bad = fc.constantFrom<Position>([Number.NaN, 40], [500, 40], [0, 89]);
const index = fc.integer({ min: 0, max: 12 });
const mergeKey = fc.option(fc.constantFrom('drag', 'nudge'), { nil: undefined, freq: 3 });

type Command =
  | { readonly kind: 'step'; readonly step: DraftStep }
  | { readonly kind: 'undo' | 'redo' | 'end-merging' | 'reload' };

const steps: fc.Arbitrary<DraftStep> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('add' as const), at: position, mergeKey }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('add' as const), at: position, index, mergeKey }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('move' as const), index, to: position, mergeKey }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('move' as const), index, to: bad, mergeKey }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('remove' as const), index, mergeKey }) },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('replace' as const),
      corners: fc.array(position, { maxLength: 8 }),
      mergeKey,
    }),
  },
);
const commands: fc.Arbitrary<Command> = fc.oneof(
  { weight: 6, arbitrary: steps.map((step): Command => ({ kind: 'step', step })) },
  { weight: 2, arbitrary: fc.constant<Command>({ kind: 'undo' }) },
  { weight: 2, arbitrary: fc.constant<Command>({ kind: 'redo' }) },
  { weight: 1, arbitrary: fc.constant<Command>({ kind: 'end-merging' }) },
  { weight: 1, arbitrary: fc.constant<Command>({ kind: 'reload' }) },
);

const START = beginDraft({
  purpose: { kind: 'zone', propertyId: 'p', zoneId: 'z', name: '' },
  tool: 'polygon',
});

/** What a draft should be: every state it was in, and which one it is in now. */
type Model = { readonly states: readonly Corners[]; readonly now: number; readonly openKey: string | undefined };

/** The corners after a step, worked out with plain arrays; null where the step has no place. */
function afterStep(corners: Corners, step: DraftStep): Corners | null {
  const isGood = ([longitude, latitude]: Position) => Math.abs(longitude) <= 180 && latitude <= 84;
  const next = [...corners];
  switch (step.kind) {
    case 'add': {
      const at = step.index ?? next.length;
      if (at > next.length) return null;
      next.splice(at, 0, step.at);
      return next;
    }
    case 'move':
      if (step.index >= next.length || !isGood(step.to)) return null;
      next[step.index] = step.to;
      return next;
    case 'remove':
      if (step.index >= next.length) return null;
      next.splice(step.index, 1);
      return next;
    case 'replace':
      return step.corners;
  }
}

function perform(model: Model, command: Command): Model {
  const { states, now, openKey } = model;
  switch (command.kind) {
    case 'step': {
      const next = afterStep(states[now] ?? [], command.step);
      if (next === null) return model;
      const merges = openKey !== undefined && openKey === command.step.mergeKey && now === states.length - 1;
      const kept = states.slice(0, merges ? now : now + 1);
      return { states: [...kept, next], now: kept.length, openKey: command.step.mergeKey };
    }
    case 'undo':
      return now === 0 ? model : { ...model, now: now - 1, openKey: undefined };
    case 'redo':
      return now === states.length - 1 ? model : { ...model, now: now + 1, openKey: undefined };
    case 'end-merging':
      return { ...model, openKey: undefined };
    case 'reload':
      return model;
  }
}

function run(draft: Draft, command: Command): Draft {
  switch (command.kind) {
    case 'step':
      return applyDraft(draft, command.step);
    case 'undo':
      return undoDraft(draft);
    case 'redo':
      return redoDraft(draft);
    case 'end-merging':
      return endDraftMerging(draft);
    case 'reload': {
      const read = readDraft(JSON.parse(JSON.stringify(draft)));
      if (!read.ok) throw new Error(read.error.detail);
      return read.value;
    }
  }
}

const times = <Value>(count: number, change: (value: Value) => Value, start: Value): Value => {
  let value = start;
  for (let done = 0; done < count; done += 1) value = change(value);
  return value;
};

describe('the history of a draft', () => {
  it('is that of a plain list of states, whatever is done to it', () => {
    fc.assert(
      fc.property(fc.array(commands, { maxLength: 80 }), (list) => {
        let draft = START;
        let model: Model = { states: [[]], now: 0, openKey: undefined };
        for (const command of list) {
          draft = run(draft, command);
          model = perform(model, command);
          expect(draft.corners).toEqual(model.states[model.now]);
          expect(draft.undo).toHaveLength(model.now);
          expect(draft.redo).toHaveLength(model.states.length - 1 - model.now);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('back and forth over 200 steps is identity', () => {
    const plain = steps.map(({ mergeKey: _, ...step }) => step as DraftStep);
    fc.assert(
      fc.property(fc.array(plain, { minLength: 200, maxLength: 400 }), (list) => {
        const before = list.reduce(applyDraft, START);
        const count = before.undo.length;
        fc.pre(count >= 100);
        const undone = times(count, undoDraft, before);
        expect(undone.corners).toEqual([]);
        expect(undone.redo).toHaveLength(count);
        expect(times(count, redoDraft, undone)).toEqual(before);
        const part = Math.floor(count / 3);
        expect(times(part, redoDraft, times(part, undoDraft, before))).toEqual(before);
      }),
      { numRuns: 30 },
    );
  });
});
