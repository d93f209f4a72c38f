import type { RoadMap } from '../types.ts';

/** Everything of a map but what is told about it: rows of numbers, in the order in which they are stored. */
export type MapRows = Pick<RoadMap, 'junctions' | 'edges' | 'restrictions'>;

export type NumberRow = Int32Array | Uint32Array | Uint16Array | Uint8Array;

/** How many numbers a row has: as many as there are of something, and sometimes one more. */
export type RowLength = 'junctions' | 'edges' | 'edges + 1' | 'shape' | 'restrictions';

export type RowSpec = {
  readonly group: keyof MapRows;
  readonly name: string;
  readonly kind: 'i32' | 'u32' | 'u16' | 'u8';
  readonly length: RowLength;
};

const EDGE_BYTES = [
  'roadClass',
  'flags',
  'access',
  'heavyAccess',
  'maxForwardKmh',
  'maxBackwardKmh',
  'signalsForward',
  'signalsBackward',
] as const;

/** Wide numbers first, so that every row begins at a multiple of its own width. */
export const ROWS: readonly RowSpec[] = [
  ...(['lon', 'lat'] as const).map((name): RowSpec => ({ group: 'junctions', name, kind: 'i32', length: 'junctions' })),
  ...(['from', 'to', 'lengthDm'] as const).map(
    (name): RowSpec => ({ group: 'edges', name, kind: 'u32', length: 'edges' }),
  ),
  { group: 'edges', name: 'shapeStart', kind: 'u32', length: 'edges + 1' },
  ...(['shapeLon', 'shapeLat'] as const).map(
    (name): RowSpec => ({ group: 'edges', name, kind: 'i32', length: 'shape' }),
  ),
  ...(['from', 'via', 'to'] as const).map(
    (name): RowSpec => ({ group: 'restrictions', name, kind: 'u32', length: 'restrictions' }),
  ),
  ...(['heightCm', 'widthCm', 'weight100Kg'] as const).map(
    (name): RowSpec => ({ group: 'edges', name, kind: 'u16', length: 'edges' }),
  ),
  { group: 'junctions', name: 'heightCm', kind: 'u16', length: 'junctions' },
  { group: 'junctions', name: 'flags', kind: 'u8', length: 'junctions' },
  ...EDGE_BYTES.map((name): RowSpec => ({ group: 'edges', name, kind: 'u8', length: 'edges' })),
  { group: 'restrictions', name: 'flags', kind: 'u8', length: 'restrictions' },
];

export function rowOf(map: MapRows, spec: RowSpec): NumberRow {
  return (map[spec.group] as Readonly<Record<string, NumberRow>>)[spec.name] as NumberRow;
}

export function bytesOf(row: NumberRow): Uint8Array {
  return new Uint8Array(row.buffer, row.byteOffset, row.byteLength);
}
