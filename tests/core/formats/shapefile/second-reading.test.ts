import fc from 'fast-check';
import { parseZip } from 'shpjs';
import { expect, it } from 'vitest';
import { GROUND_READ_OPTIONS, shapefileReader } from '../../../../core/formats/index.ts';
import { archive, dbfFile, partsShape, shpFile, WGS84_PRJ } from './build.ts';

type Corner = readonly [number, number];

/** An even polygon; shells run clockwise, holes the other way. */
function ring([x, y]: Corner, radius: number, corners: number, isHole: boolean): Corner[] {
  const steps = Array.from({ length: corners + 1 }, (_, step) => ((step % corners) / corners) * 2 * Math.PI);
  return steps.map((angle) => {
    const turn = isHole ? angle : -angle;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)] as const;
  });
}

const lot = fc.record({
  at: fc.tuple(fc.double({ min: -120, max: -70, noNaN: true }), fc.double({ min: 25, max: 49, noNaN: true })),
  corners: fc.integer({ min: 3, max: 12 }),
  holes: fc.integer({ min: 0, max: 3 }),
  twin: fc.boolean(),
  name: fc.stringMatching(/^[A-Za-z0-9]{1,10}$/),
});
type Lot = typeof lot extends fc.Arbitrary<infer Value> ? Value : never;

/** A lot, its holes beside each other inside, and perhaps a second lot far from it; rings in any order. */
function shape({ at: [x, y], corners, holes, twin }: Lot): Uint8Array {
  const rings = Array.from({ length: holes }, (_, index) => ring([x + (index - 1) * 0.002, y], 0.0005, corners, true));
  const shells = [ring([x, y], 0.01, corners * 3, false), ...(twin ? [ring([x + 0.1, y], 0.01, corners, false)] : [])];
  return partsShape(5, [...rings, ...shells]);
}

type Outline = { readonly type: string; readonly coordinates: unknown };
type Found = { readonly geometry: Outline; readonly properties: Readonly<Record<string, unknown>> };

/** Polygons and their holes in an order of their own, which readers need not agree on; to 9 decimals, a tenth of a millimetre. */
const toText = (value: unknown): string =>
  JSON.stringify(value, (_, each: unknown) => (typeof each === 'number' ? each.toFixed(9) : each));

function sorted({ type, coordinates }: Outline): unknown {
  const polygons = (type === 'Polygon' ? [coordinates] : coordinates) as readonly (readonly unknown[])[];
  const texts = polygons.map(([shell, ...holes]) => [shell, ...holes.map(toText).sort()]);
  return texts.map(toText).sort();
}

it('agrees with shpjs on names, shells and holes of any lots', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(lot, { minLength: 1, maxLength: 6 }), async (lots) => {
      const zip = archive({
        'lots.shp': shpFile(lots.map(shape)),
        'lots.dbf': dbfFile(
          [{ name: 'NAME', type: 'C', bytes: 10 }],
          lots.map(({ name }) => [name]),
        ),
        'lots.prj': WGS84_PRJ,
      });
      const ours = await shapefileReader.read(zip, 'lots.zip', GROUND_READ_OPTIONS);
      const features = ours.ok ? (ours.value.layers[0]?.features ?? []) : [];
      const theirs = (await parseZip(zip.buffer)) as { readonly features: readonly Found[] };
      expect(features.map((each) => each.attributes.NAME)).toEqual(theirs.features.map((each) => each.properties.NAME));
      expect(features.map((each) => sorted(each.geometry as Outline))).toEqual(
        theirs.features.map((each) => sorted(each.geometry)),
      );
    }),
    { numRuns: 100 },
  );
});
