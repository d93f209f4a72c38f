import { scaleLinear, scaleLog } from 'd3-scale';

/** Size of one panel of the figure, and the room round it, in units of the drawing. */
const PANEL = { width: 300, height: 220, left: 60, top: 30, gap: 90, bottom: 50 };

type Point = { readonly x: number; readonly y: number };

/**
 * Time and memory against the number of lawns, as an SVG of two panels with both axes logarithmic for time and linear for memory.
 * @param table CSV with the columns `lawns`, `seconds` and `MiB`
 */
export function growthFigure(table: string): string {
  const [head = '', ...lines] = table.trim().split('\n');
  const names = head.split(',');
  const column = (name: string): readonly number[] => {
    const at = names.indexOf(name);
    if (at < 0) throw new Error(`the table of growth lacks the column ${name}`);
    return lines.map((line) => Number(line.split(',')[at]));
  };
  const lawns = column('lawns');
  const points = (name: string): readonly Point[] => column(name).map((y, at) => ({ x: lawns[at] ?? 0, y }));
  const width = 2 * PANEL.width + PANEL.left + PANEL.gap + 20;
  const height = PANEL.top + PANEL.height + PANEL.bottom;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">`,
    '<title>Processor seconds and memory against the number of lawns</title>',
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    panel(points('seconds'), PANEL.left, 'processor seconds to a plan', true),
    panel(points('MiB'), PANEL.left + PANEL.width + PANEL.gap, 'memory, MiB', false),
    '</svg>',
    '',
  ].join('\n');
}

function panel(points: readonly Point[], left: number, title: string, isLog: boolean): string {
  const xs = points.map((each) => each.x);
  const ys = points.map((each) => each.y);
  const bottom = PANEL.top + PANEL.height;
  const x = scaleLog([Math.min(...xs), Math.max(...xs)], [left, left + PANEL.width]);
  const range = [bottom, PANEL.top];
  const y = isLog
    ? scaleLog([Math.min(...ys), Math.max(...ys)], range).nice()
    : scaleLinear([0, Math.max(...ys)], range).nice();
  const line = points.map((each) => `${x(each.x).toFixed(1)},${y(each.y).toFixed(1)}`).join(' ');
  const ticks = isLog ? y.ticks(4).filter((tick) => /^[125]/.test(String(tick))) : y.ticks(4);
  const across = ticks.map((tick) => {
    const at = y(tick).toFixed(1);
    return `<line x1="${left}" x2="${left + PANEL.width}" y1="${at}" y2="${at}" stroke="#ddd"/><text x="${left - 6}" y="${at}" text-anchor="end" dy="4">${tick}</text>`;
  });
  const marks = points.map(
    (each) => `<circle cx="${x(each.x).toFixed(1)}" cy="${y(each.y).toFixed(1)}" r="3" fill="#1b4d3e"/>`,
  );
  const below = xs.map(
    (each) => `<text x="${x(each).toFixed(1)}" y="${bottom + 18}" text-anchor="middle">${each}</text>`,
  );
  return [
    `<text x="${left}" y="${PANEL.top - 12}" font-weight="bold">${title}</text>`,
    ...across,
    `<polyline points="${line}" fill="none" stroke="#1b4d3e" stroke-width="1.5"/>`,
    ...marks,
    ...below,
    `<text x="${left + PANEL.width / 2}" y="${bottom + 38}" text-anchor="middle">lawns</text>`,
  ].join('\n');
}
