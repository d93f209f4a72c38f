import { err, ok, type Result } from '../../../../core/base/index.ts';
import type { AreaGeometry } from '../../../../core/book/index.ts';

const LEAST_CORNERS = 3;

/**
 * An area from typed corners: "latitude, longitude" for each, one on a line or with semicolons between, in decimal degrees as maps show
 * them. Errors say which corner cannot be read.
 */
export function readCorners(text: string): Result<AreaGeometry> {
  const lines = text
    .split(/[;\n]/)
    .map((each) => each.trim())
    .filter((each) => each !== '');
  const ring: [number, number][] = [];
  for (const [index, line] of lines.entries()) {
    const figures = /^(-?\d+(?:\.\d+)?)\s*[,\s]\s*(-?\d+(?:\.\d+)?)$/.exec(line);
    const [latitude, longitude] = [Number(figures?.[1]), Number(figures?.[2])];
    if (figures === null || Math.abs(latitude) > 90 || Math.abs(longitude) > 180) {
      const where = `corner ${index + 1}`;
      const hint = 'Write latitude and longitude in degrees, such as 40.0375, -89.4125.';
      return err('quantity-unreadable', where, `"${line.slice(0, 40)}" is no position on a map.`, hint);
    }
    ring.push([longitude, latitude]);
  }
  const [first] = ring;
  if (first === undefined || ring.length < LEAST_CORNERS) {
    const detail = `An area has three corners at least; there ${ring.length === 1 ? 'is one' : `are ${ring.length}`}.`;
    return err('geometry-invalid', 'corners', detail, 'Add the corners that are missing.');
  }
  return ok({ type: 'Polygon', coordinates: [[...ring, first]] });
}
