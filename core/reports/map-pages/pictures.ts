import type { Position, Property } from '../../book/index.ts';
import type { Block, MapPicture } from '../blocks.ts';
import { MAP_PAGES } from '../texts/index.ts';

type Box = { readonly west: number; readonly south: number; readonly east: number; readonly north: number };

/** Pictures that lie under some of a property's zones or its parking point. */
export function picturesUnder(property: Property, pictures: readonly MapPicture[]): readonly MapPicture[] {
  const corners = property.zones.flatMap(({ shape }): readonly Position[] => {
    if (shape.kind !== 'drawn') return [];
    return shape.geometry.type === 'Polygon' ? shape.geometry.coordinates.flat() : shape.geometry.coordinates.flat(2);
  });
  const ground = boxOf([property.parking, ...corners]);
  return pictures.filter((each) => meet(boxOf(each.corners), ground));
}

/** Whose the pictures below a map are; nothing where there are none. */
export function creditNote(pictures: readonly MapPicture[]): readonly Block[] {
  const names = [...new Set(pictures.map((each) => each.name))];
  return names.length === 0 ? [] : [{ kind: 'note', text: MAP_PAGES.background(names.join('; ')) }];
}

function boxOf(places: readonly Position[]): Box {
  const [longitudes, latitudes] = [places.map(([longitude]) => longitude), places.map(([, latitude]) => latitude)];
  return {
    west: Math.min(...longitudes),
    south: Math.min(...latitudes),
    east: Math.max(...longitudes),
    north: Math.max(...latitudes),
  };
}

const meet = (one: Box, other: Box): boolean =>
  one.west <= other.east && other.west <= one.east && one.south <= other.north && other.south <= one.north;
