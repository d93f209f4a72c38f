/** Group codes and values, one after the other. */
export type Groups = readonly (string | number)[];

export const entity = (type: string, layer: string, ...groups: Groups): Groups => [0, type, 8, layer, ...groups];

export const corners = (...points: readonly (readonly [number, number, number?])[]): Groups =>
  points.flatMap(([x, y, bulge]) => [10, x, 20, y, ...(bulge === undefined ? [] : [42, bulge])]);

export const block = (name: string, x: number, y: number, ...entities: readonly Groups[]): Groups => [
  0,
  'BLOCK',
  8,
  '0',
  2,
  name,
  70,
  0,
  10,
  x,
  20,
  y,
  3,
  name,
  1,
  '',
  ...entities.flat(),
  0,
  'ENDBLK',
  8,
  '0',
];

/** A drawing as text; `units` is $INSUNITS. */
export function drawing(entities: readonly Groups[], blocks: readonly Groups[] = [], units = 6): Uint8Array {
  const groups = [
    ...[
      0,
      'SECTION',
      2,
      'HEADER',
      9,
      '$ACADVER',
      1,
      'AC1015',
      9,
      '$CMLSTYLE',
      2,
      'ENTITIES',
      9,
      '$INSUNITS',
      70,
      units,
      0,
      'ENDSEC',
    ],
    ...[0, 'SECTION', 2, 'BLOCKS', ...blocks.flat(), 0, 'ENDSEC'],
    ...[0, 'SECTION', 2, 'ENTITIES', ...entities.flat(), 0, 'ENDSEC', 0, 'EOF'],
  ];
  return new TextEncoder().encode(`${groups.map(String).join('\r\n')}\r\n`);
}
