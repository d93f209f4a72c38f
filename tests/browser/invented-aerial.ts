import type { Book, Position } from '../../core/book/index.ts';
import { containsPosition, polygonsOf } from '../../core/geometry/index.ts';
import { degreesToShare, shareToDegrees } from '../../core/imagery/index.ts';
import { writePng } from '../../electron/services/imagery/png.ts';
import type { Colour, MadeTile } from '../support/tiles.ts';

const TILE_PX = 256;
const ROOF: Colour = [134, 92, 78];
const PAVING: Colour = [168, 164, 156];
const BED: Colour = [74, 88, 48];
const LAWN: Colour = [92, 132, 70];
const ROUGH: Colour = [122, 128, 88];

type Shape = {
  readonly ring: readonly Position[];
  readonly colour: Colour;
  readonly box: readonly [number, number, number, number];
};

/** Ground of an invented book as it might look from the air: nobody's picture, made from the outlines of the book. */
export async function inventedAerial(book: Book, z: number): Promise<readonly MadeTile[]> {
  const shapes = shapesOf(book);
  const west = Math.min(...shapes.map(({ box }) => box[0]));
  const south = Math.min(...shapes.map(({ box }) => box[1]));
  const east = Math.max(...shapes.map(({ box }) => box[2]));
  const north = Math.max(...shapes.map(({ box }) => box[3]));
  const across = 2 ** z;
  const [left = 0, top = 0] = degreesToShare(west, north).map((share) => Math.floor(share * across) - 1);
  const [right = 0, bottom = 0] = degreesToShare(east, south).map((share) => Math.floor(share * across) + 1);
  const tiles: MadeTile[] = [];
  for (let x = left; x <= right; x += 1) {
    for (let y = top; y <= bottom; y += 1) tiles.push({ z, x, y, bytes: await tileOf(shapes, z, x, y) });
  }
  return tiles;
}

function shapesOf(book: Book): readonly Shape[] {
  return book.properties.flatMap((property) => [
    ...property.exclusions.flatMap(({ geometry, what }) => {
      const colour = what === 'building' ? ROOF : what === 'paving' ? PAVING : BED;
      return polygonsOf(geometry).map((rings) => shapeOf(rings[0] ?? [], colour));
    }),
    ...property.zones.flatMap(({ shape }) =>
      shape.kind === 'drawn' ? polygonsOf(shape.geometry).map((rings) => shapeOf(rings[0] ?? [], LAWN)) : [],
    ),
  ]);
}

function shapeOf(ring: readonly Position[], colour: Colour): Shape {
  const [longitudes, latitudes] = [ring.map(([longitude]) => longitude), ring.map(([, latitude]) => latitude)];
  return {
    ring,
    colour,
    box: [Math.min(...longitudes), Math.min(...latitudes), Math.max(...longitudes), Math.max(...latitudes)],
  };
}

function tileOf(shapes: readonly Shape[], z: number, x: number, y: number): Promise<Uint8Array> {
  const pixels = new Uint8Array(TILE_PX * TILE_PX * 4);
  for (let index = 0; index < TILE_PX * TILE_PX; index += 1) {
    const [column, row] = [x * TILE_PX + (index % TILE_PX), y * TILE_PX + Math.floor(index / TILE_PX)];
    const at = shareToDegrees((column + 0.5) / TILE_PX / 2 ** z, (row + 0.5) / TILE_PX / 2 ** z);
    const colour = shapes.find((shape) => holds(shape, at))?.colour ?? ROUGH;
    const shade = grain(column, row);
    pixels.set([...colour.map((value) => value + shade), 255], index * 4);
  }
  return writePng(pixels, TILE_PX, TILE_PX);
}

function holds({ ring, box }: Shape, at: Position): boolean {
  const isNear = at[0] >= box[0] && at[0] <= box[2] && at[1] >= box[1] && at[1] <= box[3];
  return (
    isNear && containsPosition({ type: 'Polygon', coordinates: [ring.map(([e, n]): [number, number] => [e, n])] }, at)
  );
}

/** The same grain at the same pixel every time, -14 to 14. */
function grain(column: number, row: number): number {
  const fine = Math.imul(column * 374_761_393 + row * 668_265_263, 1_274_126_177) >>> 16;
  const coarse = Math.sin(column / 23) * Math.cos(row / 31);
  return (fine % 17) - 8 + Math.round(coarse * 6);
}
