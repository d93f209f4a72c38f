import { scaleLinear, scaleLog } from 'd3-scale';

/** Size of one panel of the figure, and the room round it, in units of the drawing. */
const PANEL = { width: 300, height: 220, left: 60, top: 30, gap: 90, bottom: 50 };
const COLOURS = ['#1b4d3e', '#b3541e'] as const;

type Point = { readonly x: number; readonly y: number };

/** One row of points against the column of sizes. */
export type Panel = {
  readonly title: string;
  readonly isLog: boolean;
  /** Columns of the table, each a line, and what is written beside it where there are several. */
  readonly lines: readonly { readonly column: string; readonly label?: string }[];
};

/**
 * Figures against a size, as an SVG with a panel for each kind; sizes are logarithmic.
 * @param table CSV with a column for the sizes and one for each line
 */
export function growthFigure(
  table: string,
  title: string,
  size: { readonly column: string; readonly label: string },
  panels: readonly Panel[],
): string {
  const [head = '', ...rows] = table.trim().split('\n');
  const names = head.split(',');
  const column = (name: string): readonly number[] => {
    const at = names.indexOf(name);
    if (at < 0) throw new Error(`the table of growth lacks the column ${name}`);
    return rows.map((row) => Number(row.split(',')[at]));
  };
  const sizes = column(size.column);
  const width = panels.length * (PANEL.width + PANEL.gap) + PANEL.left - PANEL.gap + 40;
  const height = PANEL.top + PANEL.height + PANEL.bottom;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">`,
    `<title>${title}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...panels.map((panel, number) => {
      const lines = panel.lines.map(({ column: name, label = '' }) => ({
        label,
        points: column(name).map((y, at) => ({ x: sizes[at] ?? 0, y })),
      }));
      return drawn(panel, lines, PANEL.left + number * (PANEL.width + PANEL.gap), size.label);
    }),
    '</svg>',
    '',
  ].join('\n');
}

function drawn(
  { title, isLog }: Panel,
  lines: readonly { readonly label: string; readonly points: readonly Point[] }[],
  left: number,
  below: string,
): string {
  const xs = lines[0]?.points.map((each) => each.x) ?? [];
  const ys = lines.flatMap(({ points }) => points.map((each) => each.y));
  const bottom = PANEL.top + PANEL.height;
  const x = scaleLog([Math.min(...xs), Math.max(...xs)], [left, left + PANEL.width]);
  const range = [bottom, PANEL.top];
  const y = isLog
    ? scaleLog([Math.min(...ys), Math.max(...ys)], range).nice()
    : scaleLinear([0, Math.max(...ys)], range).nice();
  const ticks = isLog ? y.ticks(4).filter((tick) => /^[125]|^0\.0*[125]$/.test(String(tick))) : y.ticks(4);
  const across = ticks.map((tick) => {
    const at = y(tick).toFixed(1);
    return `<line x1="${left}" x2="${left + PANEL.width}" y1="${at}" y2="${at}" stroke="#ddd"/><text x="${left - 6}" y="${at}" text-anchor="end" dy="4">${tick}</text>`;
  });
  const rows = lines.map(({ label, points }, number) => {
    const colour = COLOURS[number % COLOURS.length];
    const line = points.map((each) => `${x(each.x).toFixed(1)},${y(each.y).toFixed(1)}`).join(' ');
    const dash = number === 0 ? '' : ' stroke-dasharray="5 3"';
    const name = `<text x="${left + 8}" y="${PANEL.top + 14 + 16 * number}" fill="${colour}">${label}</text>`;
    const marks = points.map(
      (each) => `<circle cx="${x(each.x).toFixed(1)}" cy="${y(each.y).toFixed(1)}" r="3" fill="${colour}"/>`,
    );
    const way = `<polyline points="${line}" fill="none" stroke="${colour}" stroke-width="1.5"${dash}/>`;
    return [way, ...marks, ...(label === '' ? [] : [name])].join('\n');
  });
  const marks = withoutCrowd(xs, x).map(
    (each) => `<text x="${x(each).toFixed(1)}" y="${bottom + 18}" text-anchor="middle">${each}</text>`,
  );
  return [
    `<text x="${left}" y="${PANEL.top - 12}" font-weight="bold">${title}</text>`,
    ...across,
    ...rows,
    ...marks,
    `<text x="${left + PANEL.width / 2}" y="${bottom + 38}" text-anchor="middle">${below}</text>`,
  ].join('\n');
}

/** Sizes whose labels have room beside each other. */
function withoutCrowd(sizes: readonly number[], x: (size: number) => number): readonly number[] {
  const kept: number[] = [];
  for (const size of [...sizes].sort((one, other) => one - other)) {
    const last = kept.at(-1);
    if (last === undefined || x(size) - x(last) >= 45) kept.push(size);
  }
  return kept;
}
