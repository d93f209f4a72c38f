import { beforeEach, expect, it } from 'vitest';
import { ok } from '../../../core/base/index.ts';
import { emptyBook, type Overlay } from '../../../core/book/index.ts';
import {
  addPoint,
  adjustPicture,
  changePoint,
  choosePlacingFit,
  fadeOverlay,
  keepPlacing,
  pickGround,
  pickPixel,
  removeOverlay,
  removePoint,
  showBook,
  startPicture,
  undo,
  useBook,
  useOverlays,
} from '../../../renderer/stores/index.ts';
import { type FakeHost, installFakeHost, openBookOf } from '../fake-host.ts';

const PICTURE: Overlay = {
  id: 'picture-1',
  name: 'plan.png',
  picture: 'abc',
  widthPx: 200,
  heightPx: 100,
  points: [],
  opacity: 0.7,
};
const A = [-83.001, 40.001] as const;
const B = [-82.999, 40.001] as const;
let host: FakeHost;
const overlays = () => useBook.getState().open?.book.overlays;

beforeEach(() => {
  host = installFakeHost();
  useOverlays.setState({ placing: null, address: null, lost: [] });
  showBook(openBookOf(emptyBook('a', 'A')));
});

it('a chosen picture is kept by the host and laid without a point', async () => {
  host.answer('file.pick', () => ok({ kind: 'picked', token: 't', name: 'plan.png', text: null }));
  host.answer('picture.add', () => ok({ picture: 'abc', widthPx: 200, heightPx: 100 }));
  await startPicture();
  expect(useOverlays.getState().placing?.overlay).toEqual(PICTURE);
  expect(overlays()).toBeUndefined();
});

it('a pixel and then a place make a point; a place alone makes none', () => {
  adjustPicture(PICTURE);
  pickGround([...A]);
  expect(useOverlays.getState().placing?.overlay.points).toEqual([]);
  pickPixel([10, 20]);
  pickGround([...A]);
  expect(useOverlays.getState().placing).toMatchObject({
    pending: null,
    overlay: { points: [{ px: [10, 20], at: A }] },
  });
});

it('is kept in the book as one step when it can be laid, and undo takes it away', () => {
  adjustPicture(PICTURE);
  addPoint([0, 0], [...A]);
  expect(keepPlacing()).toMatchObject({ ok: false, error: { code: 'geometry-invalid' } });
  addPoint([200, 0], [...B]);
  addPoint([9, 9], [...B]);
  removePoint(2);
  changePoint(0, { px: [1, 1], at: [...A] });
  choosePlacingFit('similarity');
  expect(keepPlacing().ok).toBe(true);
  expect(useOverlays.getState().placing).toBeNull();
  const kept = {
    ...PICTURE,
    fit: 'similarity',
    points: [
      { px: [1, 1], at: A },
      { px: [200, 0], at: B },
    ],
  };
  expect(overlays()).toEqual([kept]);
  fadeOverlay('picture-1', 0.3);
  expect(overlays()?.[0]?.opacity).toBe(0.3);
  undo();
  undo();
  expect(overlays()).toBeUndefined();
});

it('changing one that is there replaces it; taking the last one off leaves none', () => {
  const laid = {
    ...PICTURE,
    points: [
      { px: [0, 0] as [number, number], at: [...A] as [number, number] },
      { px: [200, 0] as [number, number], at: [...B] as [number, number] },
    ],
  };
  adjustPicture(laid);
  keepPlacing();
  adjustPicture({ ...laid, name: 'again' });
  choosePlacingFit(null);
  keepPlacing();
  expect(overlays()?.map(({ name }) => name)).toEqual(['again']);
  removeOverlay(laid);
  expect(overlays()).toBeUndefined();
});
