import { err, type Result } from '../../../core/base/index.ts';
import type { DegreeBounds, TileAt } from '../../../core/imagery/index.ts';

/** A file of tiles, open. */
export type TileSource = {
  readonly name: string;
  readonly credit: string;
  readonly leastZoom: number;
  readonly mostZoom: number;
  readonly tilePx: 256 | 512;
  readonly bounds: DegreeBounds | null;
  /** The bytes of a picture; null where the file has no tile there. Never rejects. */
  readonly read: (tile: TileAt) => Promise<Result<Uint8Array | null>>;
  readonly close: () => Promise<void>;
};

/** Larger tiles are refused: 4 MiB. */
export const LARGEST_TILE = 4 * 1024 * 1024;
/** Zooms beyond this are not asked for. */
export const CLOSEST_ZOOM = 24;

export function badFile(where: string, detail: string): Result<never> {
  return err(
    'format-invalid',
    where,
    detail,
    'Choose MBTiles or PMTiles with pictures, or a GeoTIFF with known map coordinates.',
  );
}

/** Words of a file's own text that are safe to show: no marks of a web page, not too long. */
export function plainWords(text: unknown, most = 200): string {
  return String(text ?? '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(copy|#169);/g, '(c)')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, most);
}

/** Bounds that are longitude and latitude in order; null for anything else. */
export function soundBounds(numbers: readonly number[]): DegreeBounds | null {
  const [west = Number.NaN, south = Number.NaN, east = Number.NaN, north = Number.NaN] = numbers;
  const isSound = west >= -180 && east <= 180 && south >= -90 && north <= 90 && west < east && south < north;
  return isSound ? [west, south, east, north] : null;
}

/** A whole zoom from 0 on; the other value for anything else. */
export function soundZoom(value: unknown, otherwise: number): number {
  const zoom = typeof value === 'number' ? value : Number.parseInt(String(value ?? ''), 10);
  return Number.isInteger(zoom) && zoom >= 0 && zoom <= CLOSEST_ZOOM ? zoom : otherwise;
}
