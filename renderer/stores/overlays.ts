import { create } from 'zustand';
import { err, type Result } from '../../core/base/index.ts';
import type { Overlay, Position } from '../../core/book/index.ts';
import { type FitKind, type Placement, placePicture } from '../../core/imagery/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { edit, useBook } from './book.ts';
import { freshId } from './edits.ts';
import { pickFile } from './files.ts';
import { askHost, callHost } from './host.ts';
import { say, showError, showNews } from './notices.ts';

/** A picture that is being laid on the map. It becomes part of the book when it is done. */
export type Placing = {
  readonly overlay: Overlay;
  /** A pixel that was chosen and has no place on the map yet. */
  readonly pending: readonly [number, number] | null;
};

type OverlayState = {
  readonly placing: Placing | null;
  /** Where the host serves the pictures of the open book; null until it has said so. */
  readonly address: { readonly session: string; readonly path: string } | null;
  /** Ids of the overlays whose picture is not in the book file. */
  readonly lost: readonly string[];
};

export const useOverlays = create<OverlayState>(() => ({ placing: null, address: null, lost: [] }));

const NONE: readonly Overlay[] = [];

export function overlaysOf(): readonly Overlay[] {
  return useBook.getState().open?.book.overlays ?? NONE;
}

/** Asks once for each open book where its pictures are. */
export async function loadPictureAddress(session: string): Promise<void> {
  if (useOverlays.getState().address?.session === session) return;
  useOverlays.setState({ placing: null, address: null, lost: [] });
  const answer = await callHost('picture.address', { session });
  if (answer.ok) useOverlays.setState({ address: { session, path: answer.value.address } });
}

/** A book that came as JSON names its pictures and does not hold them. */
export function pictureLost(overlayId: string): void {
  useOverlays.setState(({ lost }) => ({ lost: [...new Set([...lost, overlayId])] }));
}

/** Lets the user choose a photo or plan, and begins to lay it. */
export async function startPicture(): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  const picked = await pickFile('picture');
  const kept = picked === null ? null : await askHost('picture.add', { session: open.session, token: picked.token });
  if (picked === null || kept === null) return;
  const id = freshId(overlaysOf(), 'picture');
  const overlay: Overlay = { ...kept, id, name: picked.name.slice(0, 200), points: [], opacity: 0.7 };
  useOverlays.setState({ placing: { overlay, pending: null } });
  say(storesWords.overlays.choosePoint);
}

export function adjustPicture(overlay: Overlay): void {
  useOverlays.setState({ placing: { overlay, pending: null } });
}

function change(changes: Partial<Overlay>): void {
  useOverlays.setState(({ placing }) =>
    placing === null ? {} : { placing: { ...placing, overlay: { ...placing.overlay, ...changes } } },
  );
}

export function pickPixel(px: readonly [number, number]): void {
  useOverlays.setState(({ placing }) => (placing === null ? {} : { placing: { ...placing, pending: px } }));
  say(storesWords.overlays.sameOnMap);
}

/** The place on the map of the pixel that was chosen. */
export function pickGround(at: Position): void {
  const { placing } = useOverlays.getState();
  if (placing === null || placing.pending === null) return;
  addPoint(placing.pending, at);
}

export function addPoint(px: readonly [number, number], at: Position): void {
  const { placing } = useOverlays.getState();
  if (placing === null) return;
  const points = [...placing.overlay.points, { px, at }];
  useOverlays.setState({ placing: { overlay: { ...placing.overlay, points }, pending: null } });
  say(storesWords.overlays.pointSet(points.length));
}

export function changePoint(index: number, point: Overlay['points'][number]): void {
  const points = useOverlays.getState().placing?.overlay.points ?? [];
  change({ points: points.map((each, at) => (at === index ? point : each)) });
}

export function removePoint(index: number): void {
  const points = useOverlays.getState().placing?.overlay.points ?? [];
  change({ points: points.filter((_, at) => at !== index) });
}

export function choosePlacingFit(fit: FitKind | null): void {
  const { placing } = useOverlays.getState();
  if (placing === null) return;
  const { fit: _before, ...rest } = placing.overlay;
  useOverlays.setState({ placing: { ...placing, overlay: fit === null ? rest : { ...rest, fit } } });
}

export function fadePlacing(opacity: number): void {
  change({ opacity });
}

export function stopPlacing(): void {
  useOverlays.setState({ placing: null });
}

/** Where a picture lies by its points. Errors: those of core/imagery. */
export function placementOf({ widthPx, heightPx, points, fit }: Overlay): Result<Placement> {
  return placePicture({ widthPx, heightPx }, points, fit ?? null);
}

/** Puts the picture that is being laid into the book, as one step. */
export function keepPlacing(): Result<unknown> {
  const { placing } = useOverlays.getState();
  if (placing === null)
    return err('nothing-to-do', 'picture', storesWords.overlays.noneLaid, storesWords.overlays.noneLaidAdvice);
  const { overlay } = placing;
  const placed = placementOf(overlay);
  if (!placed.ok) return placed;
  const others = overlaysOf();
  const isKnown = others.some(({ id }) => id === overlay.id);
  const overlays = isKnown ? others.map((each) => (each.id === overlay.id ? overlay : each)) : [...others, overlay];
  const done = edit({ kind: 'set', changes: { overlays }, label: storesWords.overlays.lay(overlay.name) });
  if (done.ok) stopPlacing();
  return done;
}

export function fadeOverlay(id: string, opacity: number): void {
  const overlays = overlaysOf().map((each) => (each.id === id ? { ...each, opacity } : each));
  const done = edit({ kind: 'set', changes: { overlays }, label: storesWords.overlays.changeStrength });
  if (!done.ok) showError(done.error);
}

export function removeOverlay({ id, name }: Overlay): void {
  const left = overlaysOf().filter((each) => each.id !== id);
  const changes = { overlays: left.length === 0 ? null : left };
  const done = edit({ kind: 'set', changes, label: storesWords.overlays.takeOff(name) });
  if (done.ok) showNews(storesWords.overlays.isOff(name), true);
  else showError(done.error);
}
