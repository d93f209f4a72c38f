import { useEffect, useMemo } from 'react';
import type { Overlay } from '../../core/book/index.ts';
import type { Background } from '../../core/contract/index.ts';
import type { MapBackdrop, OverlayLook, TileLook } from '../map/index.ts';
import {
  loadBackgrounds,
  loadPictureAddress,
  NO_BACKGROUND,
  pickGround,
  pictureLost,
  placementOf,
  tilesMissing,
  useBackground,
  useBook,
  useHost,
  useOverlays,
} from '../stores/index.ts';

const NONE: readonly Overlay[] = [];

/** The chosen background where it can be shown; null for the grid. */
export function useChosenBackground(): Background | null {
  const list = useBackground((state) => state.list);
  const chosen = useHost((state) => state.settings.background);
  return list.find(({ id, fault }) => id === chosen && chosen !== NO_BACKGROUND && fault === null) ?? null;
}

/** What lies behind the lawns on every map: the chosen background, and the pictures of the book. */
export function useBackdrop(): MapBackdrop {
  const session = useBook((state) => state.open?.session ?? null);
  useEffect(() => {
    loadBackgrounds().catch(() => undefined);
  }, []);
  useEffect(() => {
    if (session !== null) loadPictureAddress(session).catch(() => undefined);
  }, [session]);
  const background = useChosenBackground();
  const turn = useBackground((state) => state.turn);
  const opacity = useHost((state) => state.settings.backgroundOpacity);
  const kept = useBook((state) => state.open?.book.overlays ?? NONE);
  const placing = useOverlays((state) => state.placing);
  const address = useOverlays((state) => state.address);
  const lookAt = useBackground((state) => state.lookAt);
  return useMemo(
    () => ({
      tiles: background === null ? null : tileLook(background, turn),
      opacity,
      overlays: address === null ? [] : overlayLooks(kept, placing?.overlay ?? null, address.path),
      marks: placing?.overlay.points.map(({ at }, index) => ({ words: String(index + 1), at })) ?? [],
      onMissing: (id, missing) => {
        tilesMissing(id, missing).catch(() => undefined);
      },
      lookAt,
      onPictureLost: pictureLost,
      onPick: placing === null || placing.pending === null ? null : pickGround,
    }),
    [background, turn, opacity, kept, placing, address, lookAt],
  );
}

function tileLook({ id, address, leastZoom, mostZoom, tilePx, bounds, allowed }: Background, turn: number): TileLook {
  return { id, address, leastZoom, mostZoom, tilePx, bounds, turn: `${allowed} ${turn}` };
}

/** The pictures of the book, with the one that is being laid in place of its older self. */
function overlayLooks(kept: readonly Overlay[], placing: Overlay | null, path: string): readonly OverlayLook[] {
  const shown = placing === null ? kept : [...kept.filter(({ id }) => id !== placing.id), placing];
  return shown.flatMap((overlay) => {
    const placed = placementOf(overlay);
    if (!placed.ok) return [];
    const { id, widthPx, heightPx, opacity, picture } = overlay;
    return [{ id, address: path + picture, widthPx, heightPx, corners: placed.value.corners, opacity }];
  });
}
