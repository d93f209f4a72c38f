import { beforeEach, describe, expect, test } from 'vitest';
import { err, ok } from '../../../core/base/index.ts';
import type { GroundSource, SourceLayer } from '../../../core/formats/index.ts';
import {
  addImported,
  beginImport,
  closeImport,
  edit,
  type GroundImport,
  goToImportStep,
  groundProgress,
  importAction,
  previewTimes,
  readGround,
  showBook,
  understandFile,
  understandLayer,
  undo,
  useBook,
  useImport,
  useNotices,
} from '../../../renderer/stores/index.ts';
import { boxShape, layerOf, sourceOf } from '../../core/intake/sources.ts';
import { answerEdits, type FakeHost, installFakeHost, openBookOf, settle, smallBook } from '../fake-host.ts';

let host: FakeHost;
const book = () => useBook.getState().open!.book;
const current = () => useImport.getState().current;
const ground = (): GroundImport => {
  const found = current();
  if (found.kind !== 'ground') throw new Error(`a file of ground was expected, not ${found.kind}`);
  return found;
};
const lawns = (...ids: readonly string[]): SourceLayer =>
  layerOf(ids.map((id, index) => ({ id, geometry: boxShape(index * 200, 0, index * 200 + 100, 100) })));

beforeEach(() => {
  host = installFakeHost();
  closeImport();
  useBook.setState(useBook.getInitialState(), true);
  useNotices.setState(useNotices.getInitialState(), true);
  showBook(openBookOf(smallBook()));
});

async function opened(source: GroundSource): Promise<void> {
  host.answer('ground.read', () => ok(source));
  await readGround('lawns.kml', 'file-1');
}

/** Until the book has been looked at. */
async function looked(): Promise<GroundImport> {
  for (let round = 0; round < 200; round += 1) {
    const found = current();
    if (found.kind === 'ground' && found.preview !== null) return found;
    await new Promise((done) => setTimeout(done, 5));
  }
  throw new Error('the book was not looked at');
}

describe('a file of ground', () => {
  test('is read by the host, looked at, and added as one step that undo takes back', async () => {
    answerEdits(host);
    await opened(sourceOf(lawns('a', 'b')));
    expect(ground()).toMatchObject({ step: 'content', fileName: 'lawns.kml', preview: null });
    goToImportStep('changes');
    const { preview } = await looked();
    expect(preview?.counts).toMatchObject({ found: 2, new: 2, rejected: 0 });
    expect(addImported('lawns.kml', { kind: 'ground', preview: preview! })).toBe(true);
    expect(book().properties.map((each) => each.id)).toEqual(['p1', 'a', 'b']);
    expect(useBook.getState().history.undo.map((step) => step.label)).toEqual(['Add 2 lawns from lawns.kml']);
    undo();
    expect(book()).toEqual(smallBook());
  });

  test('is not added to a book that was changed meanwhile', async () => {
    answerEdits(host);
    await opened(sourceOf(lawns('a')));
    goToImportStep('changes');
    const { preview } = await looked();
    edit({ kind: 'remove', table: 'properties', id: 'p1' });
    expect(addImported('lawns.kml', { kind: 'ground', preview: preview! })).toBe(false);
    expect(useNotices.getState().notice).toMatchObject({ kind: 'error', error: { code: 'book-changed' } });
    expect(book().properties).toEqual([]);
  });

  test('is looked at anew when it is understood otherwise', async () => {
    await opened(sourceOf(lawns('a')));
    goToImportStep('changes');
    await looked();
    goToImportStep('content');
    understandLayer(0, { role: 'exclusions' });
    understandFile({ mergeBy: 'place' });
    expect(ground().preview).toBeNull();
    goToImportStep('changes');
    expect((await looked()).preview?.counts).toMatchObject({ found: 1, rejected: 1 });
  });

  test('asks the host for places of addresses alone', async () => {
    host.answer('places.find', ({ addresses }: { addresses: readonly string[] }) =>
      ok(
        addresses.map((each) => (each === '12 Elm Court' ? { kind: 'placed', at: [-89, 40] } : { kind: 'not-placed' })),
      ),
    );
    const rows = ['12 Elm Court', '99 Nowhere'].map((address) => ({ attributes: { address, area: 5000 } }));
    await opened(sourceOf(layerOf(rows)));
    goToImportStep('changes');
    const { preview } = await looked();
    expect(preview?.rows.map((each) => each.kind)).toEqual(['new', 'rejected']);
    expect(preview?.properties[0]?.after).toMatchObject({ parking: [-89, 40], placedBy: 'address-range' });
  });

  test('that the host cannot read is told; one that was stopped is not', async () => {
    host.answer('ground.read', () => err('format-unknown', 'letter.doc', 'No format.', 'Choose another.'));
    await readGround('letter.doc', 'file-1');
    expect(current().kind).toBe('none');
    expect(useNotices.getState().notice).toMatchObject({ error: { code: 'format-unknown' } });
    useNotices.setState({ notice: null });
    let answer: (value: ReturnType<typeof err>) => void = () => undefined;
    host.answer('ground.read', () => new Promise((done) => (answer = done)));
    const reading = readGround('large.gpkg', 'file-2');
    await settle();
    groundProgress({ token: 'file-2', step: 'Reading records', done: 3, total: 9 });
    groundProgress({ token: 'another', step: 'Reading records', done: 4, total: 9 });
    expect(current()).toMatchObject({ kind: 'reading', progress: { done: 3 } });
    closeImport();
    answer(err('cancelled', 'large.gpkg', 'Stopped.', ''));
    await reading;
    expect(host.asked.some((each) => each.name === 'ground.cancel')).toBe(true);
    expect([current().kind, useNotices.getState().notice]).toEqual(['none', null]);
  });
});

describe('travel times', () => {
  test('are known by the columns of their table, and used as one step', () => {
    const rows = [
      { attributes: { from: 'shop', to: 'p1', seconds: '60' } },
      { attributes: { from: 'shop', to: 'p1', seconds: '61' } },
    ];
    const begun = beginImport('times.csv', { ...sourceOf(layerOf(rows)), formatId: 'csv' });
    if (!begun.ok || begun.value.kind !== 'matrix') throw new Error('travel times were expected');
    expect(begun.value).toMatchObject({ found: 2, rejected: 1, matrix: { placeIds: ['shop', 'p1'] } });
    const action = importAction(book(), 'times.csv', { kind: 'matrix', matrix: begun.value.matrix });
    expect(action).toMatchObject({ ok: true, value: { kind: 'set', label: 'Use travel times of times.csv' } });
  });

  test('without text or columns are refused', () => {
    expect(previewTimes('times.csv', null)).toMatchObject({ ok: false, error: { code: 'file-not-readable' } });
    expect(previewTimes('times.csv', 'a,b\n1,2\n')).toMatchObject({ ok: false, error: { code: 'format-invalid' } });
  });
});
