import type { GeoTIFFImage } from 'geotiff';
import type { Projection } from '../../../core/geometry/index.ts';
import { type DegreeBounds, zoomForPixel } from '../../../core/imagery/index.ts';
import { type PixelFrame, rasterFrame } from '../geotiff/index.ts';

export type GroundFrame = {
  readonly frame: PixelFrame;
  readonly projection: Projection;
  readonly bounds: DegreeBounds;
  /** The zoom at which a tile's pixel is about one of the picture's. */
  readonly zoom: number;
};

/** Reads where a GeoTIFF lies on the earth; the words say why it cannot be found. */
export function groundFrame(image: GeoTIFFImage): GroundFrame | { readonly why: string } {
  const placed = rasterFrame(image);
  if ('why' in placed) return placed;
  const ground = measureGround(image, placed.frame, placed.projection);
  return ground ?? { why: 'The picture lies outside what its system of map coordinates can show.' };
}

const EDGE_STEPS = 8;
const METRES_PER_DEGREE = 111_320;

function measureGround(image: GeoTIFFImage, frame: PixelFrame, projection: Projection): GroundFrame | null {
  const [width, height] = [image.getWidth(), image.getHeight()];
  const edge: (readonly [number, number])[] = [];
  for (let step = 0; step <= EDGE_STEPS; step += 1) {
    const [column, row] = [(width * step) / EDGE_STEPS, (height * step) / EDGE_STEPS];
    for (const corner of [
      frame.toMap(column, 0),
      frame.toMap(column, height),
      frame.toMap(0, row),
      frame.toMap(width, row),
    ]) {
      const at = projection.toDegrees(...corner);
      if (at === null) return null;
      edge.push([at[0], at[1]]);
    }
  }
  const [longitudes, latitudes] = [edge.map(([longitude]) => longitude), edge.map(([, latitude]) => latitude)];
  const bounds: DegreeBounds = [
    Math.min(...longitudes),
    Math.min(...latitudes),
    Math.max(...longitudes),
    Math.max(...latitudes),
  ];
  const middle = projection.toDegrees(...frame.toMap(width / 2, height / 2));
  const beside = projection.toDegrees(...frame.toMap(width / 2 + 1, height / 2));
  if (middle === null || beside === null) return null;
  const shrink = Math.cos((middle[1] * Math.PI) / 180);
  const pixelM = Math.hypot((beside[0] - middle[0]) * shrink, beside[1] - middle[1]) * METRES_PER_DEGREE;
  return { frame, projection, bounds, zoom: zoomForPixel(pixelM, middle[1]) };
}
