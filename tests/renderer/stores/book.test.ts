import { beforeEach, describe, expect, test } from 'vitest';
import { err, ok } from '../../../core/base/index.ts';
import {
  changeProperty,
  edit,
  freshId,
  redo,
  removeLawn,
  selectProperty,
  showBook,
  trySavingAgain,
  undo,
  useBook,
  useNotices,
  useSelection,
} from '../../../renderer/stores/index.ts';
import { answerEdits, DISK_FULL, type FakeHost, installFakeHost, openBookOf, settle, smallBook } from '../fake-host.ts';

let host: FakeHost;
const book = () => useBook.getState().open!.book;
const property = () => book().properties[0]!;
const gateWidth = () => property().gates[0]!.clearWidthIn;
const widen = (clearWidthIn: number) =>
  changeProperty(property(), { gates: [{ ...property().gates[0]!, clearWidthIn }] }, 'Change gate width');
const applied = () => host.asked.filter((each) => each.name === 'book.apply').map((each) => each.request);

beforeEach(() => {
  host = installFakeHost();
  useBook.setState(useBook.getInitialState(), true);
  useNotices.setState(useNotices.getInitialState(), true);
  showBook(openBookOf(smallBook()));
});

describe('an edit', () => {
  test('is shown at once and stored with the revision it was made on', async () => {
    answerEdits(host);
    expect(widen(40).ok).toBe(true);
    expect(gateWidth()).toBe(40);
    expect(useBook.getState().save.kind).toBe('saving');
    await settle();
    expect(useBook.getState().save.kind).toBe('saved');
    expect(useBook.getState().open).toMatchObject({ revision: 8, savedAt: '2027-03-16T10:42:00Z' });
    expect(applied()).toEqual([expect.objectContaining({ session: 's1', baseRevision: 7 })]);
  });

  test('made while another is on its way waits for it and names its revision', async () => {
    answerEdits(host);
    widen(40);
    widen(41);
    widen(42);
    await settle();
    expect(applied()).toHaveLength(3);
    expect(useBook.getState().open!.revision).toBe(10);
    expect(useBook.getState().save.kind).toBe('saved');
  });

  test('that the schema refuses changes nothing', () => {
    const refused = changeProperty(
      property(),
      { gates: [{ ...property().gates[0]!, clearWidthIn: -3 }] },
      'Change gate width',
    );
    expect(refused.ok).toBe(false);
    expect(gateWidth()).toBe(36);
    expect(host.asked.some((each) => each.name === 'book.apply')).toBe(false);
  });

  test('that cannot be stored stays on screen and is stored when tried again', async () => {
    host.answer('book.apply', () => ({ ok: false, error: DISK_FULL }));
    widen(40);
    await settle();
    expect(useBook.getState().save).toEqual({ kind: 'failed', error: DISK_FULL });
    expect(useNotices.getState().notice).toEqual({ kind: 'error', error: DISK_FULL });
    expect(gateWidth()).toBe(40);
    answerEdits(host);
    trySavingAgain();
    await settle();
    expect(useBook.getState().save.kind).toBe('saved');
    expect(useBook.getState().open!.revision).toBe(8);
  });

  test('on a book that was changed elsewhere gives way to the stored book', async () => {
    host.answer('book.apply', () => err('book-changed', 'book', 'The book was changed.', 'Read it again.'));
    host.answer('book.read', () => ok(openBookOf({ ...smallBook(), name: 'From elsewhere' }, 12)));
    widen(40);
    await settle();
    expect(book().name).toBe('From elsewhere');
    expect(gateWidth()).toBe(36);
    expect(useBook.getState()).toMatchObject({ history: { undo: [], redo: [] }, save: { kind: 'saved' } });
  });

  test('without a book is refused', () => {
    useBook.setState(useBook.getInitialState(), true);
    expect(edit({ kind: 'set', changes: { name: 'x' } })).toMatchObject({
      ok: false,
      error: { code: 'nothing-to-do' },
    });
  });
});

describe('undo and redo', () => {
  test('take steps back and do them again, each stored like an edit', async () => {
    answerEdits(host);
    const before = book();
    widen(40);
    widen(44);
    undo();
    expect(gateWidth()).toBe(40);
    undo();
    expect(book()).toEqual(before);
    redo();
    redo();
    expect(gateWidth()).toBe(44);
    await settle();
    expect(applied()).toHaveLength(6);
    expect(useBook.getState().save.kind).toBe('saved');
  });

  test('say what they took back', () => {
    answerEdits(host);
    widen(40);
    undo();
    expect(useNotices.getState().notice).toMatchObject({ kind: 'news', text: 'Undid: Change gate width' });
  });

  test('a new edit after an undo ends the redo; a selection does not', () => {
    answerEdits(host);
    widen(40);
    undo();
    selectProperty('p1');
    expect(useBook.getState().history.redo).toHaveLength(1);
    widen(50);
    expect(useBook.getState().history.redo).toEqual([]);
  });

  test('do nothing where there is nothing', () => {
    undo();
    redo();
    expect(book()).toEqual(smallBook());
  });
});

describe('removing a lawn', () => {
  test('offers to take it back and lets go of the selection', () => {
    answerEdits(host);
    selectProperty('p1');
    removeLawn('p1');
    expect(book().properties).toEqual([]);
    expect(useSelection.getState().propertyId).toBeNull();
    expect(useNotices.getState().notice).toMatchObject({ kind: 'news', undoable: true });
    undo();
    expect(book()).toEqual(smallBook());
  });
});

describe('ids', () => {
  test('are free ones', () => {
    expect(freshId([], 'lawn')).toBe('lawn-1');
    expect(freshId([{ id: 'lawn-2' }], 'lawn')).toBe('lawn-3');
    expect(freshId([{ id: 'lawn-1' }, { id: 'x' }], 'lawn')).toBe('lawn-3');
  });
});
