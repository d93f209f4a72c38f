import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Book, emptyBook } from '../../../core/book/index.ts';
import {
  type Action,
  applyAction,
  endMerging,
  type History,
  MOST_STEPS,
  NO_HISTORY,
  remember,
  stepBack,
  stepForward,
} from '../../../core/edit/index.ts';

type Desk = { readonly book: Book; readonly history: History };

const START: Desk = { book: emptyBook('b', 'start'), history: NO_HISTORY };

function apply(book: Book, action: Action) {
  const applied = applyAction(book, action);
  if (!applied.ok) throw new Error(applied.error.detail);
  return applied.value;
}

function edit(desk: Desk, action: Action, mergeKey?: string): Desk {
  const { book, inverse, label } = apply(desk.book, action);
  const step = mergeKey === undefined ? { label, action: inverse } : { label, action: inverse, mergeKey };
  return { book, history: remember(desk.history, step) };
}

function undo(desk: Desk): Desk {
  const step = desk.history.undo.at(-1);
  if (step === undefined) return desk;
  const { book, inverse } = apply(desk.book, step.action);
  return { book, history: stepBack(desk.history, { label: step.label, action: inverse }) };
}

function redo(desk: Desk): Desk {
  const step = desk.history.redo.at(-1);
  if (step === undefined) return desk;
  const { book, inverse } = apply(desk.book, step.action);
  return { book, history: stepForward(desk.history, { label: step.label, action: inverse }) };
}

const rename = (name: string): Action => ({ kind: 'set', changes: { name }, label: 'Change name' });
const place = (id: string, name: string): Action => ({
  kind: 'put',
  table: 'fillPoints',
  record: { id, name, what: 'shop', at: [-83, 40], waterGpm: 0, visitMin: 5, minutesPerBag: 0.5, products: 'all' },
});

describe('history', () => {
  test('a row of edits is taken back and done again one by one, with its labels', () => {
    const done = edit(edit(START, rename('one')), place('p', 'P'));
    expect(done.history.undo.map((each) => each.label)).toEqual(['Change name', 'Add fill point P']);
    const back = undo(done);
    expect(back.book.fillPoints).toEqual([]);
    expect(back.book.name).toBe('one');
    expect(undo(back).book).toEqual(START.book);
    expect(redo(redo(undo(back))).book).toEqual(done.book);
  });

  test('a new edit ends what could be done again', () => {
    const branched = edit(undo(edit(START, rename('one'))), rename('two'));
    expect(branched.history.redo).toEqual([]);
    expect(undo(branched).book.name).toBe('start');
  });

  test('typing in one field is one step; leaving the field ends it', () => {
    const typed = ['n', 'ne', 'new'].reduce((desk, name) => edit(desk, rename(name), 'name'), START);
    expect(typed.history.undo).toHaveLength(1);
    expect(undo(typed).book.name).toBe('start');
    expect(redo(undo(typed)).book.name).toBe('new');
    const left = { ...typed, history: endMerging(typed.history) };
    const again = edit(left, rename('newer'), 'name');
    expect(again.history.undo).toHaveLength(2);
    expect(undo(again).book.name).toBe('new');
  });

  test('merging changes of one record keeps one short action; an added record goes away again', () => {
    const there = edit(START, place('p', 'P'));
    const typed = ['Pa', 'Par'].reduce((desk, name) => edit(desk, place('p', name), 'p/name'), there);
    expect(typed.history.undo.at(-1)?.action.kind).toBe('put');
    expect(undo(typed).book).toEqual(there.book);
    const fresh = edit(edit(START, place('q', 'Q'), 'q'), place('q', 'Qu'), 'q');
    expect(fresh.history.undo).toHaveLength(1);
    expect(undo(fresh).book).toEqual(START.book);
  });

  test('other keys, no keys and an undo between do not merge', () => {
    const keys = ['a', 'b', undefined, undefined];
    const desk = keys.reduce((each, key, at) => edit(each, rename(`name ${at}`), key), START);
    expect(desk.history.undo).toHaveLength(4);
    const one = edit(START, rename('one'), 'name');
    const two = edit(endedThen(one, rename('two')), rename('three'), 'name');
    expect(two.history.undo).toHaveLength(3);
    const afterUndo = edit(undo(edit(one, place('p', 'P'))), rename('four'), 'name');
    expect(afterUndo.history.undo).toHaveLength(2);
  });

  test(`keeps the newest ${MOST_STEPS} steps`, () => {
    const desk = Array.from({ length: MOST_STEPS + 5 }, (_, at) => rename(`name ${at}`)).reduce(
      (each, action) => edit(each, action),
      START,
    );
    expect(desk.history.undo).toHaveLength(MOST_STEPS);
    let back = desk;
    for (let count = 0; count < MOST_STEPS + 5; count += 1) back = undo(back);
    expect(back.book.name).toBe('name 4');
  });
});

function endedThen(desk: Desk, action: Action): Desk {
  return edit({ ...desk, history: endMerging(desk.history) }, action);
}

test('undo^n and redo^n are the identity, with merging and wherever one starts', () => {
  const anyEdit = fc.record({
    action: fc.oneof(
      fc.string({ maxLength: 8 }).map(rename),
      fc.tuple(fc.constantFrom('a', 'b', 'c'), fc.string({ maxLength: 5 })).map(([id, name]) => place(id, name)),
      fc.record({
        kind: fc.constant('remove' as const),
        table: fc.constant('fillPoints' as const),
        id: fc.constantFrom('a', 'b'),
      }),
      fc.record({
        kind: fc.constant('move' as const),
        table: fc.constant('fillPoints' as const),
        id: fc.constantFrom('a', 'b', 'c'),
        to: fc.nat(3),
      }),
    ),
    mergeKey: fc.constantFrom(undefined, undefined, 'x', 'y'),
    undoes: fc.nat(2),
  });
  fc.assert(
    fc.property(fc.array(anyEdit, { maxLength: 25 }), (edits) => {
      let desk: Desk = START;
      for (const { action, mergeKey, undoes } of edits) {
        if (applyAction(desk.book, action).ok) desk = edit(desk, action, mergeKey);
        if (undoes === 2) desk = undo(desk);
      }
      const steps = desk.history.undo.length;
      let back = desk;
      for (let count = 0; count < steps; count += 1) back = undo(back);
      expect(back.book).toEqual(START.book);
      let again = back;
      for (let count = 0; count < steps; count += 1) again = redo(again);
      expect(again.book).toEqual(desk.book);
      expect(again.history.undo.map((each) => each.label)).toEqual(desk.history.undo.map((each) => each.label));
    }),
    { numRuns: 500 },
  );
});
