import { formatNumber, METRES_PER_FOOT } from '../units/index.ts';
import type { MapLegend } from './blocks.ts';
import { escapeHtml } from './escape.ts';
import { fillSvg, type Rings } from './map-fill.ts';
import type { Frame } from './map-labels.ts';
import { MAP_LEGEND } from './texts/index.ts';

/** Room for the legend at the right of a map. */
export const LEGEND_WIDTH = 250;

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

/** What the lines and patterns of a map mean, each with a sample of it, on white whatever lies below. */
export function legendSvg(entries: MapLegend, left: number, height: number): string {
  const lines = entries.map((entry, index) => {
    const words = `<text class="small start" x="42" y="6">${escapeHtml(MAP_LEGEND[entry])}</text>`;
    return `<g transform="translate(${left + 8} ${LEGEND_TOP + index * LEGEND_STEP})">${SAMPLES[entry]}${words}</g>`;
  });
  return `<rect class="ground" x="${left}" y="0" width="${LEGEND_WIDTH}" height="${height}"/>${lines.join('')}`;
}

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
