import { layerOf, linksOf, type Sources } from './check.ts';

/**
 * The drawing of docs/architecture.md, made from what the sources import: a box for each folder of core that is a unit, and for each part
 * of the hosts and screens; a line from a box down to each that it uses code of. A line is left out where another way leads there.
 */

type Graph = ReadonlyMap<string, ReadonlySet<string>>;

const WIDTH = 1180;
const ROW_HEIGHT = 84;
const BOX_HEIGHT = 30;
const GAP = 14;
const MARGIN = 24;
/** Of a letter of a name, roughly. */
const LETTER = 6.6;

function boxOf(file: string): string | null {
  if (file.startsWith('core/')) return layerOf(file);
  const [part, folder, ...rest] = file.split('/');
  if (part === 'renderer') return 'renderer';
  return part === 'electron' && rest.length > 0 && folder !== 'tools' && folder !== 'packaging'
    ? `electron/${folder}`
    : null;
}

/** Who uses whose code; imports of types alone leave nothing at run time and do not count. */
export function graphOf(sources: Sources): Graph {
  const graph = new Map<string, Set<string>>();
  for (const { from, to, typeOnly } of linksOf(sources)) {
    const [user, used] = [boxOf(from), to === null ? null : boxOf(to)];
    if (user === null) continue;
    const uses = graph.get(user) ?? new Set<string>();
    graph.set(user, uses);
    if (used !== null && used !== user && !typeOnly) uses.add(used);
  }
  for (const uses of [...graph.values()]) for (const used of uses) if (!graph.has(used)) graph.set(used, new Set());
  return graph;
}

/** Rows from the bottom: 0 uses nothing, any other stands one above the highest that it uses. Throws at a ring. */
export function rowsOf(graph: Graph): ReadonlyMap<string, number> {
  const rows = new Map<string, number>();
  const visit = (name: string, above: readonly string[]): number => {
    const known = rows.get(name);
    if (known !== undefined) return known;
    if (above.includes(name)) throw new Error(`a ring: ${[...above, name].join(' → ')}`);
    const below = [...(graph.get(name) ?? [])].map((used) => visit(used, [...above, name]));
    const row = Math.max(-1, ...below) + 1;
    rows.set(name, row);
    return row;
  };
  for (const name of graph.keys()) visit(name, []);
  return rows;
}

/** The graph without the lines that another way stands for. */
export function reduced(graph: Graph): Graph {
  const reach = (from: string, seen: Set<string>): Set<string> => {
    for (const used of graph.get(from) ?? []) {
      if (seen.has(used)) continue;
      seen.add(used);
      reach(used, seen);
    }
    return seen;
  };
  return new Map(
    [...graph].map(([name, uses]) => {
      const further = new Set([...uses].flatMap((used) => [...reach(used, new Set())]));
      return [name, new Set([...uses].filter((used) => !further.has(used)))];
    }),
  );
}

type Box = { readonly name: string; readonly x: number; readonly y: number; readonly width: number };

/** Boxes row by row, each as near as it can be to what it is joined with; the order is settled in a few sweeps. */
function laidOut(graph: Graph, lines: Graph): ReadonlyMap<string, Box> {
  const rows = rowsOf(graph);
  const height = Math.max(...rows.values());
  const order = Array.from({ length: height + 1 }, (_, row) =>
    [...graph.keys()].filter((name) => rows.get(name) === row).toSorted(),
  );
  const place = new Map<string, number>();
  const settle = (row: readonly string[]): void =>
    row.forEach((name, index) => {
      place.set(name, (index + 1) / (row.length + 1));
    });
  order.forEach(settle);
  const joined = (name: string): readonly string[] => [
    ...(lines.get(name) ?? []),
    ...[...lines].filter(([, uses]) => uses.has(name)).map(([user]) => user),
  ];
  for (let sweep = 0; sweep < 8; sweep += 1) {
    order.forEach((row, index) => {
      const wish = (name: string): number => {
        const places = joined(name).map((each) => place.get(each) ?? 0.5);
        return places.length === 0 ? 0.5 : places.reduce((sum, each) => sum + each, 0) / places.length;
      };
      const sorted = row.toSorted((one, other) => wish(one) - wish(other) || one.localeCompare(other));
      order[index] = sorted;
      settle(sorted);
    });
  }
  return new Map(
    order.flatMap((row, index) => {
      const widths = row.map((name) => LETTER * shortName(name).length + 18);
      const free = WIDTH - 2 * MARGIN - widths.reduce((sum, each) => sum + each, 0);
      const gap = Math.max(GAP, free / (row.length + 1));
      let x = MARGIN + gap;
      return row.map((name, at) => {
        const width = widths[at] ?? 0;
        const box = { name, x, y: MARGIN + (height - index) * ROW_HEIGHT, width };
        x += width + gap;
        return [name, box] as const;
      });
    }),
  );
}

const shortName = (name: string): string => name.replace(/^core\//, '');

/** The drawing as SVG, the same text for the same sources. */
export function architectureSvg(sources: Sources): string {
  const graph = graphOf(sources);
  const lines = reduced(graph);
  const boxes = laidOut(graph, lines);
  const height = 2 * MARGIN + BOX_HEIGHT + Math.max(...rowsOf(graph).values()) * ROW_HEIGHT;
  const round = (value: number): string => String(Math.round(value * 10) / 10);
  const paths = [...lines].flatMap(([name, uses]) =>
    [...uses].toSorted().flatMap((used) => {
      const [from, to] = [boxes.get(name), boxes.get(used)];
      if (from === undefined || to === undefined) return [];
      const [x1, y1] = [from.x + from.width / 2, from.y + BOX_HEIGHT];
      const [x2, y2] = [to.x + to.width / 2, to.y];
      const bend = Math.min(40, (y2 - y1) / 2);
      return `<path d="M${round(x1)} ${y1}C${round(x1)} ${round(y1 + bend)} ${round(x2)} ${round(y2 - bend)} ${round(x2)} ${y2}"/>`;
    }),
  );
  const drawn = [...boxes.values()].map(({ name, x, y, width }) => {
    const isCore = name.startsWith('core/');
    const words = `<text x="${round(x + width / 2)}" y="${y + 20}">${shortName(name)}</text>`;
    return `<rect x="${round(x)}" y="${y}" width="${round(width)}" height="${BOX_HEIGHT}"${isCore ? '' : ' class="host"'}/>${words}`;
  });
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-labelledby="title">`,
    '<title id="title">Folders of Swardway, each above those that it uses code of</title>',
    '<style>text{font:12px sans-serif;text-anchor:middle;fill:#1d241f}rect{fill:#fff;stroke:#3c463f;rx:3}.host{stroke-dasharray:5 3}path{fill:none;stroke:#8a938c;stroke-width:1}</style>',
    `<rect x="0" y="0" width="${WIDTH}" height="${height}" style="stroke:none"/>`,
    ...paths,
    ...drawn,
    '</svg>',
  ].join('\n')}\n`;
}
