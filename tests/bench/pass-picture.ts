import { writeFileSync } from 'node:fs';
import { type PlanePoint, type Region, STEPS_PER_METRE } from '../../core/geometry/index.ts';
import { type Leg, planPasses } from '../../core/passes/index.ts';
import { houseLawn } from '../core/passes/grounds.ts';

/** Draws docs/methods/passes.svg, the picture of the page on passes: npm run docs:passes */
const HEAD = { swathFt: 5, overlapFt: 1, trimPasses: 2, turnSec: 4, speedMph: 3.5 };
const SCALE = 20;
const EDGE_M = 1;

const ground = houseLawn();
const plan = planPasses(ground, HEAD);
if (!plan.ok) throw new Error(plan.error.detail);
const { west, south, east, north } = ground.box;
const left = west / STEPS_PER_METRE - EDGE_M;
const top = north / STEPS_PER_METRE + EDGE_M;
const at = ({ x, y }: PlanePoint): string => `${((x - left) * SCALE).toFixed(1)} ${((top - y) * SCALE).toFixed(1)}`;
const width = ((east - west) / STEPS_PER_METRE + 2 * EDGE_M) * SCALE;
const height = ((north - south) / STEPS_PER_METRE + 2 * EDGE_M) * SCALE;

const outline = (region: Region): string =>
  region.paths
    .map((path) => `M${path.map(({ x, y }) => at({ x: x / STEPS_PER_METRE, y: y / STEPS_PER_METRE })).join('L')}Z`)
    .join('');
const line = (leg: Leg): string => `M${leg.points.map(at).join('L')}`;

const legs = plan.value.path;
const treated = legs.filter((leg) => leg.kind !== 'transit');
const svg = [
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">`,
  '<title>Passes over a lawn round a house: two trim passes, then straight swaths</title>',
  `<rect width="${width}" height="${height}" fill="#fff"/>`,
  `<path d="${outline(ground)}" fill="#eef3ea" stroke="#333" fill-rule="evenodd"/>`,
  ...treated.map(
    (leg) =>
      `<path d="${line(leg)}" fill="none" stroke="#1b6f5a" stroke-opacity="0.28" stroke-width="${(leg.widthM * SCALE).toFixed(1)}" stroke-linejoin="round"/>`,
  ),
  `<path d="${outline(plan.value.handTrim)}" fill="#b3261e" fill-rule="evenodd"/>`,
  ...treated.map((leg) => `<path d="${line(leg)}" fill="none" stroke="#0b3d31" stroke-width="1.2"/>`),
  ...legs
    .filter((leg) => leg.kind === 'transit')
    .map((leg) => `<path d="${line(leg)}" fill="none" stroke="#7a4b00" stroke-width="1.2" stroke-dasharray="5 4"/>`),
  '</svg>',
  '',
];
writeFileSync('docs/methods/passes.svg', svg.join('\n'));
