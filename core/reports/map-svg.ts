import type { AreaGeometry, Position } from '../book/index.ts';
import { formatNumber } from '../units/index.ts';
import type { Block, MapPasses, MapPoint } from './blocks.ts';
import { escapeHtml } from './escape.ts';
import { type Spot, spreadLabels } from './map-labels.ts';
import { PAGE } from './texts/index.ts';

type MapBlock = Extract<Block, { readonly kind: 'map' }>;

const WIDTH = 700;
const HEIGHT = 275;
const SMALL_HEIGHT = 140;
const MARGIN = 26;
const FEET_PER_DEGREE = 364_567;
/** Lengths for the scale bar, ft or m. */
const BAR_LENGTHS = [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000] as const;
const FEET_PER_METRE = 1 / 0.3048;
/** From this many stops on, their labels are smaller. */
const MANY_STOPS = 16;
/** A label that stands nearer to its place needs no line to it. */
const LEADER_WORTH_DRAWING = 3;

/** A small map as SVG that prints in grey: turf hatched, exclusions cross-hatched, water dotted; with scale bar and north. */
export function mapSvg(map: MapBlock): string {
  const height = map.size === 'small' ? SMALL_HEIGHT : HEIGHT;
  const places = [
    ...map.areas.flatMap((each) => ringsOf(each.geometry).flat()),
    ...map.points.map((each) => each.at),
    ...map.route,
  ];
  const view = fitView(places, height);
  if (view === null) return '';
  const areas = map.areas.map((each) => {
    const outline = ringsOf(each.geometry)
      .map((ring) => path(ring.map(view.spot), true))
      .join('');
    // White below the pattern hides the hatching of the turf around it.
    const ground = each.look === 'turf' || each.look === 'parcel' ? '' : `<path class="ground" d="${outline}"/>`;
    return `${ground}<path class="${each.look}" d="${outline}"/>`;
  });
  const passes = (map.passes ?? []).map((each) => passesSvg(each, view));
  const route = map.route.length < 2 ? '' : `<path class="route" d="${path(map.route.map(view.spot), false)}"/>`;
  const points = map.points.map((each) => (each.look === 'stop' ? '' : pointSvg(each, view.spot(each.at))));
  points.push(stopsSvg(map.points, view));
  return `<svg class="map" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${PAGE.map}">${PATTERNS}${areas.join('')}${passes.join('')}${route}${points.join('')}${furniture(view, map.units)}</svg>`;
}

function ringsOf(geometry: AreaGeometry): readonly (readonly Position[])[] {
  return geometry.type === 'Polygon' ? geometry.coordinates : geometry.coordinates.flat();
}

type View = { readonly spot: (at: Position) => Spot; readonly pixelsPerFoot: number; readonly height: number };

/** Fits places into the picture. Local scaling is enough here: nothing is measured off a printed map. */
function fitView(places: readonly Position[], height: number): View | null {
  const [first] = places;
  if (first === undefined) return null;
  let [west, south, east, north] = [first[0], first[1], first[0], first[1]];
  for (const [lon, lat] of places) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  const shrink = Math.cos((((south + north) / 2) * Math.PI) / 180);
  const wide = Math.max((east - west) * shrink * FEET_PER_DEGREE, 30);
  const high = Math.max((north - south) * FEET_PER_DEGREE, 30);
  const pixelsPerFoot = Math.min((WIDTH - 2 * MARGIN) / wide, (height - 2 * MARGIN) / high);
  const middle: Spot = [(west + east) / 2, (south + north) / 2];
  return {
    pixelsPerFoot,
    height,
    spot: ([lon, lat]) => [
      WIDTH / 2 + (lon - middle[0]) * shrink * FEET_PER_DEGREE * pixelsPerFoot,
      height / 2 - (lat - middle[1]) * FEET_PER_DEGREE * pixelsPerFoot,
    ],
  };
}

function path(spots: readonly Spot[], closed: boolean): string {
  const steps = spots.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`);
  return steps.join('') + (closed ? 'Z' : '');
}

function pointSvg(point: MapPoint, [x, y]: Spot): string {
  const label = escapeHtml(point.label);
  const at = `translate(${x.toFixed(1)} ${y.toFixed(1)})`;
  if (point.look === 'name') return `<g transform="${at}"><text class="name" y="5">${label}</text></g>`;
  if (point.look === 'gate')
    return `<g transform="${at}"><path class="gate" d="M-7 -5v10M7 -5v10"/><text class="small" y="-9">${label}</text></g>`;
  return `<g transform="${at}"><circle class="${point.look}" r="12"/><text y="5">${label}</text></g>`;
}

/** Lines of the passes; what is gone over twice is dotted, what is not reached is crossed so closely that it prints dark. */
function passesSvg({ legs, overlap, missed }: MapPasses, view: View): string {
  const outline = (geometry: AreaGeometry): string =>
    ringsOf(geometry)
      .map((ring) => path(ring.map(view.spot), true))
      .join('');
  const lines = legs.map(({ kind, positions }) => {
    const spots = positions.map(view.spot);
    const [from, to] = spots;
    // The arrow of a swath hangs on a corner in its middle.
    const isSwath = kind === 'swath' && from !== undefined && to !== undefined;
    const drawn = isSwath ? [from, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const, to] : spots;
    return `<path class="pass-${kind}" d="${path(drawn, false)}"/>`;
  });
  const again = `<path class="pass-twice" d="${outline(overlap)}"/>`;
  return `${again}${lines.join('')}<path class="pass-missed" d="${outline(missed)}"/>`;
}

/** Numbers of stops, moved apart where they would cover each other; a line leads from a moved number to its place. */
function stopsSvg(points: readonly MapPoint[], view: View): string {
  const stops = points.filter((each) => each.look === 'stop');
  const [radius, size] = stops.length < MANY_STOPS ? [12, ''] : [10, ' class="tight"'];
  const places = stops.map((each) => view.spot(each.at));
  const spots = spreadLabels(places, radius, { width: WIDTH, height: view.height });
  const leaders = places.map((place, index) => leaderSvg(place, spots[index] ?? place));
  const circles = stops.map((each, index) => {
    const [x, y] = spots[index] ?? view.spot(each.at);
    const circle = `<circle class="stop" r="${radius}"/><text${size} y="${size === '' ? 5 : 4}">${escapeHtml(each.label)}</text>`;
    return `<g transform="translate(${x.toFixed(1)} ${y.toFixed(1)})">${circle}</g>`;
  });
  return leaders.join('') + circles.join('');
}

function leaderSvg(place: Spot, spot: Spot): string {
  if (Math.hypot(spot[0] - place[0], spot[1] - place[1]) < LEADER_WORTH_DRAWING) return '';
  const [x, y] = place;
  return `<path class="leader" d="${path([place, spot], false)}"/><circle class="place" cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="2.4"/>`;
}

/** Scale bar and north arrow. */
function furniture({ pixelsPerFoot, height }: View, units: MapBlock['units']): string {
  const [pixelsPerUnit, unit] = units === 'us' ? [pixelsPerFoot, 'ft'] : [pixelsPerFoot * FEET_PER_METRE, 'm'];
  const span = BAR_LENGTHS.findLast((each) => each * pixelsPerUnit <= 160) ?? BAR_LENGTHS[0];
  const length = (span * pixelsPerUnit).toFixed(1);
  const y = height - 10;
  const words = `${formatNumber(span)} ${unit}`;
  const bar = `<g class="bar"><path d="M12 ${y - 5}v5h${length}v-5"/><text class="small start" x="12" y="${y - 8}">${words}</text></g>`;
  const north = `<g class="bar" transform="translate(${WIDTH - 18} 14)"><path d="M0 22V0M-5 7L0 0L5 7"/><text class="small" y="37">N</text></g>`;
  return bar + north;
}

const PATTERNS =
  '<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V6" class="thread"/></pattern><pattern id="cross" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M0 0L6 6M6 0L0 6" class="thread"/></pattern><pattern id="dots" width="5" height="5" patternUnits="userSpaceOnUse"><circle cx="2.5" cy="2.5" r="0.9" class="dot"/></pattern><pattern id="twice" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="1" cy="1" r="0.6" class="dot"/></pattern><pattern id="missed" width="3" height="3" patternUnits="userSpaceOnUse"><path d="M0 0L3 3M3 0L0 3" class="missed-thread"/></pattern><marker id="driven" markerUnits="userSpaceOnUse" markerWidth="8" markerHeight="8" refX="4" refY="4" orient="auto"><path d="M1.5 1L6 4L1.5 7" class="driven"/></marker></defs>';
