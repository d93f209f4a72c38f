import { useEffect, useState } from 'react';
import type { Overlay } from '../../../core/book/index.ts';
import type { MapPicture } from '../../../core/reports/index.ts';
import { loadPictureAddress, placementOf, useBook, useOverlays } from '../../stores/index.ts';

/** On paper a picture is fainter than on the screen, so that lines and names on it stay readable; no finer than a printer shows it. */
const MOST_OPACITY = 0.5;
const MOST_PX = 1600;
const QUALITY = 0.8;

const NONE: readonly MapPicture[] = [];
const NO_OVERLAYS: readonly Overlay[] = [];

/** The book's own plans and photos as they go below the maps of a sheet, while they are wanted. Those that cannot be read are left out. */
export function useDayPictures(isWanted: boolean): readonly MapPicture[] {
  const session = useBook((state) => state.open?.session ?? null);
  const overlays = useBook((state) => state.open?.book.overlays ?? NO_OVERLAYS);
  const address = useOverlays((state) => state.address);
  const [pictures, setPictures] = useState(NONE);
  useEffect(() => {
    if (isWanted && session !== null && overlays.length > 0) loadPictureAddress(session).catch(() => undefined);
  }, [isWanted, session, overlays]);
  useEffect(() => {
    setPictures(NONE);
    if (!isWanted || address === null || address.session !== session || overlays.length === 0) return undefined;
    let isCurrent = true;
    const read = overlays.map((each) => pictureOf(each, address.path).catch(() => null));
    void Promise.all(read).then((found) => {
      if (isCurrent) setPictures(found.filter((each) => each !== null));
    });
    return () => {
      isCurrent = false;
    };
  }, [isWanted, session, overlays, address]);
  return pictures;
}

/** Null where it lies nowhere, is bent by perspective (a printed map only keeps parallels), or is faded out. */
async function pictureOf(overlay: Overlay, path: string): Promise<MapPicture | null> {
  const placed = placementOf(overlay);
  if (!placed.ok || placed.value.fit === 'projective' || overlay.opacity === 0) return null;
  const image = new Image();
  image.src = `${path}${overlay.picture}`;
  await image.decode();
  const scale = Math.min(1, MOST_PX / Math.max(overlay.widthPx, overlay.heightPx));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(overlay.widthPx * scale));
  canvas.height = Math.max(1, Math.round(overlay.heightPx * scale));
  const context = canvas.getContext('2d');
  if (context === null) return null;
  // What a picture leaves free is paper.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return {
    id: overlay.id,
    address: canvas.toDataURL('image/jpeg', QUALITY),
    widthPx: canvas.width,
    heightPx: canvas.height,
    corners: placed.value.corners,
    opacity: Math.min(overlay.opacity, MOST_OPACITY),
    name: overlay.name,
  };
}
