import { beforeEach, describe, expect, test } from 'vitest';
import { createRandom, err, ok } from '../../../core/base/index.ts';
import { type Position, writeBook } from '../../../core/book/index.ts';
import {
  choosePart,
  deleteParts,
  draftStep,
  drawAvoided,
  drawExclusion,
  drawZone,
  editCorners,
  finishDrawing,
  goOnWithDraft,
  mergeZones,
  nudgeParts,
  offsetParts,
  pickUp,
  placeGate,
  putDown,
  redo,
  redoDraftStep,
  selectProperty,
  setDraftAside,
  showBook,
  squareParts,
  startDrafts,
  stepOutOfDraft,
  storedText,
  takeUpDraft,
  throwDraftAway,
  undo,
  undoDraftStep,
  useBook,
  useDraft,
  useNotices,
  useParts,
  whyNotDraw,
  workedParts,
} from '../../../renderer/stores/index.ts';
import { answerEdits, DISK_FULL, type FakeHost, installFakeHost, openBookOf, settle, smallBook } from '../fake-host.ts';

let host: FakeHost;
const saved = () => host.asked.filter(({ name }) => name === 'draft.save').map(({ request }) => request);
const draft = () => useDraft.getState().draft;
const book = () => {
  const { open } = useBook.getState();
  if (open === null) throw new Error('no book is open');
  return open.book;
};

/** Feet east and north of a corner of the lawn, in degrees: at 40.03 N a foot is 1 / 364,570 of a degree of latitude. */
const at = (eastFt: number, northFt: number): Position => [-89.4 + eastFt / 279_500, 40.03 + northFt / 364_570];
const square = (eastFt: number, northFt: number, sideFt: number): readonly Position[] => [
  at(eastFt, northFt),
  at(eastFt + sideFt, northFt),
  at(eastFt + sideFt, northFt + sideFt),
  at(eastFt, northFt + sideFt),
];
const draw = (corners: readonly Position[]) => {
  for (const corner of corners) draftStep({ kind: 'add', at: corner });
};

beforeEach(() => {
  host = installFakeHost();
  answerEdits(host);
  host.answer('draft.save', () => ok({ revision: 7, savedAt: '2027-03-16T10:42:00Z' }));
  showBook(openBookOf(smallBook()));
  selectProperty('p1');
});

describe('a draft', () => {
  test('is kept with the book at every step, the newest last', async () => {
    drawZone();
    await settle();
    draw(square(0, 0, 50));
    await settle();
    await settle();
    const texts = saved().map((request) => (request as { draft: string }).draft);
    expect(texts.length).toBeGreaterThan(1);
    const last = JSON.parse(texts.at(-1) ?? '');
    expect(last.open.corners).toEqual(square(0, 0, 50));
    expect(useDraft.getState().kept).toBe('kept');
  });

  test('that cannot be kept says so once, stays on screen, and is kept with the next step', async () => {
    host.answer('draft.save', () => err(DISK_FULL.code, DISK_FULL.where, DISK_FULL.detail, DISK_FULL.hint));
    drawZone();
    draw(square(0, 0, 50));
    await settle();
    expect(useDraft.getState().kept).toBe('failed');
    expect(useNotices.getState().notice).toMatchObject({ kind: 'error', error: { code: 'disk-full' } });
    expect(draft()?.corners).toHaveLength(4);
    host.answer('draft.save', () => ok({ revision: 7, savedAt: '' }));
    draftStep({ kind: 'remove', index: 3 });
    await settle();
    expect(useDraft.getState().kept).toBe('kept');
  });

  test('found with the book is offered, with its own undo', () => {
    drawZone();
    draw(square(0, 0, 50));
    const text = storedText(useDraft.getState());
    startDrafts('s2', text);
    expect(useDraft.getState().found).toBe(true);
    goOnWithDraft();
    expect(useDraft.getState().found).toBe(false);
    undoDraftStep();
    expect(draft()?.corners).toEqual(square(0, 0, 50).slice(0, 3));
    redoDraftStep();
    expect(draft()?.corners).toEqual(square(0, 0, 50));
  });

  test.each(['not JSON', '{"open":{"corners":5}}', '{"open":null,"aside":[1]}'])(
    'that is %s is named and not taken',
    (text) => {
      startDrafts('s2', text);
      expect(draft()).toBeNull();
      expect(useNotices.getState().notice).toMatchObject({ kind: 'error', error: { code: 'format-invalid' } });
    },
  );

  test('bars every tool with the reason, and is left by Esc without losing a corner', () => {
    drawZone();
    draw(square(0, 0, 50));
    expect(whyNotDraw()).toContain('finish it or set it aside');
    placeGate();
    drawExclusion('building');
    expect(draft()?.purpose.kind).toBe('zone');
    stepOutOfDraft();
    expect(draft()).toBeNull();
    const { aside } = useDraft.getState();
    expect(aside.map(({ corners }) => corners)).toEqual([square(0, 0, 50)]);
    placeGate();
    takeUpDraft(aside[0]!);
    expect(draft()?.corners).toEqual(square(0, 0, 50));
    // The gate that was begun had no place yet: nothing of it is worth keeping.
    expect(useDraft.getState().aside).toEqual([]);
  });

  test('is thrown away at once with two corners; from three on it asks, and Esc keeps it', () => {
    drawZone();
    draw(square(0, 0, 50).slice(0, 2));
    throwDraftAway();
    expect(draft()).toBeNull();
    drawZone();
    draw(square(0, 0, 50).slice(0, 3));
    throwDraftAway();
    expect(useDraft.getState().asking).toBe(true);
    stepOutOfDraft();
    expect(draft()?.corners).toHaveLength(3);
    throwDraftAway();
    throwDraftAway(true);
    expect(draft()).toBeNull();
    expect(useDraft.getState().aside).toEqual([]);
  });

  test('that crosses itself is refused and stays', () => {
    drawZone();
    const [a, b, c, d] = square(0, 0, 50) as [Position, Position, Position, Position];
    draw([a, c, b, d]);
    const before = writeBook(book());
    expect(finishDrawing()?.ok).toBe(false);
    expect(draft()?.corners).toHaveLength(4);
    expect(writeBook(book())).toBe(before);
  });
});

describe('what is drawn', () => {
  test('gives a zone with a stated area its outline and keeps the figure to hold it against', () => {
    drawZone();
    draw(square(0, 0, 50));
    expect(finishDrawing()?.ok).toBe(true);
    const [zone] = book().properties[0]!.zones;
    expect(zone).toMatchObject({ id: 'z', shape: { kind: 'drawn', outlineErrorFt: 1 }, statedAreaSqFt: 8000 });
    expect(useParts.getState().finished?.part.partId).toBe('z');
  });

  test('begins a new lawn where none is selected', () => {
    selectProperty(null);
    drawZone('rectangle');
    draw([at(0, 0), at(60, 0), at(60, 40)]);
    expect(finishDrawing()?.ok).toBe(true);
    expect(book().properties).toHaveLength(2);
    expect(useParts.getState().finished?.newProperty).toBe(true);
  });

  test('can be moved, merged, squared up, widened, copied and deleted', () => {
    drawZone();
    draw(square(0, 0, 50));
    finishDrawing();
    drawZone();
    draw(square(50, 0, 50));
    finishDrawing();
    const [first, second] = book().properties[0]!.zones;
    choosePart({ propertyId: 'p1', kind: 'zone', partId: first!.id }, false);
    choosePart({ propertyId: 'p1', kind: 'zone', partId: second!.id }, true);
    expect(workedParts()).toHaveLength(2);
    mergeZones();
    expect(book().properties[0]!.zones.map(({ id }) => id)).toEqual(['z']);
    pickUp('copy');
    putDown(at(200, 200));
    expect(book().properties[0]!.zones).toHaveLength(2);
    choosePart({ propertyId: 'p1', kind: 'zone', partId: 'z' }, false);
    deleteParts();
    expect(book().properties[0]!.zones).toHaveLength(1);
    expect(useNotices.getState().notice).toMatchObject({ kind: 'news', text: 'Zone whole deleted', undoable: true });
  });

  test('nudged by arrow keys is one step, taken back at once', () => {
    drawZone();
    draw(square(0, 0, 50));
    finishDrawing();
    const before = writeBook(book());
    for (let press = 0; press < 5; press += 1) nudgeParts(1, 0);
    expect(writeBook(book())).not.toBe(before);
    undo();
    expect(writeBook(book())).toBe(before);
  });
});

test('200 steps of drawing and changing, taken back and done again, give the same book', () => {
  selectProperty(null);
  const random = createRandom(20_270_316);
  const start = writeBook(book());
  const states: string[] = [start];
  const chosen = () => {
    const property = book().properties.at(-1)!;
    const part = property.zones[Math.floor(random.unit() * property.zones.length)];
    if (part !== undefined) choosePart({ propertyId: property.id, kind: 'zone', partId: part.id }, false);
    return part;
  };
  const steps: readonly (() => void)[] = [
    () => {
      drawZone('polygon', book().properties.at(-1)!.zones.length > 8 || random.unit() < 0.2);
      draw(square(random.unit() * 900, random.unit() * 900, 20 + random.unit() * 60));
      finishDrawing();
    },
    () => {
      drawExclusion('building');
      draw(square(random.unit() * 900, random.unit() * 900, 10 + random.unit() * 20));
      finishDrawing();
    },
    () => {
      placeGate();
      draftStep({ kind: 'add', at: at(random.unit() * 900, random.unit() * 900) });
      finishDrawing();
    },
    () => {
      if (chosen() === undefined) return;
      editCorners();
      draftStep({ kind: 'move', index: 0, to: draft()?.corners[0] ?? at(0, 0) });
      draftStep({ kind: 'add', index: 1, at: at(random.unit() * 900, random.unit() * 900) });
      if (finishDrawing()?.ok !== true) throwDraftAway(true);
    },
    () => chosen() !== undefined && nudgeParts(Math.round(random.unit() * 20) - 10, 3),
    () => chosen() !== undefined && squareParts(),
    () => chosen() !== undefined && offsetParts(1 + Math.floor(random.unit() * 3)),
    () => {
      if (chosen() === undefined) return;
      pickUp('move');
      putDown(at(random.unit() * 900, random.unit() * 900));
    },
    () => book().properties.at(-1)!.zones.length > 3 && chosen() !== undefined && deleteParts(),
  ];
  for (let guard = 0; states.length < 201 && guard < 5000; guard += 1) {
    const step = steps[guard === 0 ? 0 : Math.floor(random.unit() * steps.length)]!;
    step();
    setDraftAside();
    // Nudges of one part that follow each other are one step of the history; so is what is taken back.
    states.length = useBook.getState().history.undo.length;
    states.push(writeBook(book()));
  }
  expect(states).toHaveLength(201);
  expect(useBook.getState().history.undo).toHaveLength(200);
  const end = states.at(-1);
  for (let step = 199; step >= 0; step -= 1) {
    undo();
    if (writeBook(book()) !== states[step]) throw new Error(`undo gives another book at step ${step}`);
  }
  expect(writeBook(book())).toBe(start);
  for (let step = 0; step < 200; step += 1) redo();
  expect(writeBook(book())).toBe(end);
});

describe('an area to drive round', () => {
  test('needs no lawn, goes into the roads of the book as one step, and chooses nothing', () => {
    useParts.setState({ parts: [], finished: null });
    selectProperty(null);
    drawAvoided();
    expect(draft()?.purpose).toEqual({ kind: 'avoid', areaId: 'avoid-1', name: '' });
    draw(square(0, 0, 900));
    finishDrawing();
    expect(draft()).toBeNull();
    expect(book().roads?.avoid.map(({ id, name }) => [id, name])).toEqual([['avoid-1', 'Area 1']]);
    expect(useParts.getState()).toMatchObject({ parts: [], finished: null });
    drawAvoided();
    draw(square(1000, 0, 900));
    finishDrawing();
    expect(book().roads?.avoid.map(({ id }) => id)).toEqual(['avoid-1', 'avoid-2']);
    undo();
    expect(book().roads?.avoid.map(({ id }) => id)).toEqual(['avoid-1']);
    undo();
    expect(book().roads).toBeUndefined();
  });

  test('that crosses itself is refused with the reason, and stays to be mended', () => {
    drawAvoided();
    const [a, b, c, d] = square(0, 0, 900) as [Position, Position, Position, Position];
    draw([a, c, b, d]);
    expect(finishDrawing()?.ok).toBe(false);
    expect(draft()?.corners).toHaveLength(4);
    expect(book().roads).toBeUndefined();
  });
});
