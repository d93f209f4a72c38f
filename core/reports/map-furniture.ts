import { formatNumber, METRES_PER_FOOT } from '../units/index.ts';
import type { MapLegend } from './blocks.ts';
import { escapeHtml } from './escape.ts';
import { fillSvg, type Rings } from './map-fill.ts';
import type { Frame } from './map-labels.ts';
import { MAP_LEGEND } from './texts/index.ts';

/** Room for the legend at the right of a map. */
export const LEGEND_WIDTH = 250;
/** A sample of a line or pattern, and the gap behind its words. */
const SAMPLE_WIDTH = 42;
const ENTRY_GAP = 16;
/** A letter in large print is about this wide. */
const LETTER_WIDTH = 11.5;

/** Lengths for the scale bar, ft or m. */
const BAR_LENGTHS = [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000] as const;
const FEET_PER_METRE = 1 / METRES_PER_FOOT;
const LONGEST_BAR = 160;
const LEGEND_TOP = 72;
const LEGEND_STEP = 25;

/** A bar of a round length in the lower left corner. */
export function scaleBar(pixelsPerFoot: number, { height }: Frame, units: 'us' | 'metric'): string {
  const [pixelsPerUnit, unit] = units === 'us' ? [pixelsPerFoot, 'ft'] : [pixelsPerFoot * FEET_PER_METRE, 'm'];
  const span = BAR_LENGTHS.findLast((each) => each * pixelsPerUnit <= LONGEST_BAR) ?? BAR_LENGTHS[0];
  const length = (span * pixelsPerUnit).toFixed(1);
  const y = height - 10;
  const words = `${formatNumber(span)} ${unit}`;
  return `<g class="bar"><path d="M12 ${y - 5}v5h${length}v-5"/><text class="small start" x="12" y="${y - 8}">${words}</text></g>`;
}

/** North is always up. */
export function northArrow(width: number): string {
  return `<g class="bar" transform="translate(${width - 18} 14)"><path d="M0 22V0M-5 7L0 0L5 7"/><text class="small" y="37">N</text></g>`;
}

/** What the lines and patterns of a map mean, each with a sample of it, at the right of the map. */
export function legendBeside(entries: MapLegend, left: number, height: number): string {
  const lines = entries.map((each, index) => entrySvg(each, left + 8, LEGEND_TOP + index * LEGEND_STEP));
  return `${whiteGround(left, 0, LEGEND_WIDTH, height)}${lines.join('')}`;
}

/** The same in rows below the map. */
export function legendBelow(entries: MapLegend, top: number, width: number): string {
  const rows = legendRows(entries, width);
  const lines = rows.flatMap((row, index) =>
    row.map(({ entry, left }) => entrySvg(entry, left, top + (index + 0.5) * LEGEND_STEP)),
  );
  return `${whiteGround(0, top, width, rows.length * LEGEND_STEP)}${lines.join('')}`;
}

/** How high the legend is that stands below a map. */
export function legendHeight(entries: MapLegend, width: number): number {
  return legendRows(entries, width).length * LEGEND_STEP;
}

type Entry = { readonly entry: MapLegend[number]; readonly left: number };

function legendRows(entries: MapLegend, width: number): readonly (readonly Entry[])[] {
  const rows: Entry[][] = [[]];
  let left = 8;
  for (const entry of entries) {
    const wide = SAMPLE_WIDTH + MAP_LEGEND[entry].length * LETTER_WIDTH;
    if (left + wide > width && left > 8) {
      rows.push([]);
      left = 8;
    }
    rows.at(-1)?.push({ entry, left });
    left += wide + ENTRY_GAP;
  }
  return rows;
}

function entrySvg(entry: MapLegend[number], left: number, middle: number): string {
  const words = `<text class="small start" x="${SAMPLE_WIDTH}" y="6">${escapeHtml(MAP_LEGEND[entry])}</text>`;
  return `<g transform="translate(${left.toFixed(1)} ${middle})">${SAMPLES[entry]}${words}</g>`;
}

/** Hides whatever lies below. */
const whiteGround = (left: number, top: number, width: number, height: number): string =>
  `<rect class="ground" x="${left}" y="${top}" width="${width}" height="${height}"/>`;

const line = (look: string): string => `<path class="${look}" d="M0 0L17 0L34 0"/>`;
const BOX: Rings = [
  [
    [4, -8],
    [30, -8],
    [30, 8],
    [4, 8],
  ],
];
const box = (fill: 'turf' | 'twice' | 'missed'): string =>
  `${fillSvg(fill, BOX)}<path class="sample" d="M4 -8H30V8H4Z"/>`;

const SAMPLES: Readonly<Record<MapLegend[number], string>> = {
  trim: line('pass-trim'),
  swath: line('pass-swath'),
  transit: line('pass-transit'),
  twice: box('twice'),
  missed: box('missed'),
  turf: box('turf'),
  parking: '<circle class="stop" cx="17" cy="0" r="9"/>',
};
