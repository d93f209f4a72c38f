import * as v from 'valibot';
import { err, ok, type Result } from '../../../../core/base/index.ts';
import { type AreaGeometry, areaGeometrySchema, readJson } from '../../../../core/book/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';

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
      const where = roadsWords.avoided.cornerPlace(index + 1);
      const hint = roadsWords.avoided.cornerAdvice;
      return err('quantity-unreadable', where, roadsWords.avoided.noPosition(line.slice(0, 40)), hint);
    }
    ring.push([longitude, latitude]);
  }
  const [first] = ring;
  if (first === undefined || ring.length < LEAST_CORNERS) {
    const detail = roadsWords.avoided.tooFewCorners(ring.length);
    return err('geometry-invalid', 'corners', detail, roadsWords.avoided.tooFewCornersAdvice);
  }
  return ok({ type: 'Polygon', coordinates: [[...ring, first]] });
}

/** An area of a file with its name. */
export type NamedArea = { readonly name: string; readonly area: AreaGeometry };

const LONGEST_NAME = 200;
const feature = v.looseObject({
  geometry: areaGeometrySchema,
  properties: v.optional(v.nullable(v.looseObject({ name: v.optional(v.string()) }))),
});
const collection = v.looseObject({ features: v.array(v.unknown()) });

/**
 * The polygons of a GeoJSON file (RFC 7946), named by their member `name`, or by the file. Errors: 'not-json', and 'format-invalid' where it
 * holds no polygon; points and lines are passed over.
 */
export function readAreas(text: string, fileName: string): Result<readonly NamedArea[]> {
  const json = readJson(text, fileName);
  if (!json.ok) return json;
  const whole = v.safeParse(collection, json.value);
  const features = whole.success ? whole.output.features : [json.value];
  const areas = features.flatMap((each): NamedArea[] => {
    const read = v.safeParse(feature, each);
    if (!read.success) return [];
    const { geometry, properties } = read.output;
    return [{ name: (properties?.name ?? fileName).slice(0, LONGEST_NAME), area: geometry as AreaGeometry }];
  });
  if (areas.length > 0) return ok(areas);
  return err('format-invalid', fileName, roadsWords.avoided.noPolygon, roadsWords.avoided.noPolygonAdvice);
}
