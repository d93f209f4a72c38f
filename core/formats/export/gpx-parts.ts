import type { Position } from '../../book/index.ts';
import { degreesText } from './degrees.ts';
import { xmlField } from './xml-text.ts';

/** What GPX 1.1 says of a point, in the order of its schema. Empty texts are left out. */
export type GpxPoint = {
  readonly at: Position;
  readonly name: string;
  /** For the receiver's owner. */
  readonly cmt: string;
  readonly desc: string;
  readonly src?: string;
  readonly type: string;
};

/** A point of a file: a waypoint, or a point of a route. */
export function gpxPoint(element: 'wpt' | 'rtept', point: GpxPoint): string {
  const [longitude, latitude] = point.at;
  const place = `lat="${degreesText(latitude)}" lon="${degreesText(longitude)}"`;
  const fields = (['name', 'cmt', 'desc', 'src', 'type'] as const).map((each) => xmlField(each, point[each] ?? ''));
  return `<${element} ${place}>${fields.join('')}</${element}>`;
}

/** A GPX 1.1 file: what it is of, then waypoints, then routes, as the schema orders them. */
export function gpxFile(name: string, desc: string, elements: readonly string[]): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Swardway" xmlns="http://www.topografix.com/GPX/1/1">
<metadata>${xmlField('name', name)}${xmlField('desc', desc)}</metadata>
${elements.join('\n')}
</gpx>
`;
}
