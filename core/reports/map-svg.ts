import type { AreaGeometry, Position } from '../book/index.ts';
import type { Block, MapLegend, MapPasses, MapPoint } from './blocks.ts';
import { escapeHtml } from './escape.ts';
import { fillSvg, type Rings } from './map-fill.ts';
import { LEGEND_WIDTH, legendBelow, legendBeside, legendHeight, northArrow, scaleBar } from './map-furniture.ts';
import { type Frame, type Spot, spreadLabels } from './map-labels.ts';
import { pictureSvg } from './map-picture.ts';
import { PAGE } from './texts/index.ts';

type MapBlock = Extract<Block, { readonly kind: 'map' }>;

const WIDTH = 700;
/** Heights of maps by their size. */
const HEIGHTS = { small: 140, medium: 240, usual: 275, large: 640 } as const;
const MARGIN = 26;
/** Below the map stands the scale bar; a small map has no room to leave it free. */
const marginBelow = (height: number): number => (height <= HEIGHTS.small ? MARGIN : 46);
const FEET_PER_DEGREE = 364_567;
/** From this many stops on, their rings are smaller. */
const MANY_STOPS = 16;
const MOST_LETTERS = 24;
/** A label that stands nearer to its place needs no line to it. */
const LEADER_WORTH_DRAWING = 3;

/** A small map as SVG that prints in grey: turf hatched, exclusions cross-hatched, water dotted; with scale bar and north. */
export function mapSvg(map: MapBlock): string {
  const height = HEIGHTS[map.size ?? 'usual'];
  const places = [
    ...map.areas.flatMap((each) => ringsOf(each.geometry).flat()),
    ...map.points.map((each) => each.at),
    ...map.route,
  ];
  const laidOut = layOut(places, map.legend ?? [], height);
  if (laidOut === null) return '';
  const { view, legend } = laidOut;
  const pictures = (map.pictures ?? []).map((each) => pictureSvg(each, view.spot));
  const areas = map.areas.map((each) => {
    const rings = spotsOf(each.geometry, view);
    const outline = outlineOf(rings);
    // White below the hatching hides that of the turf around it.
    const ground =
      each.look === 'turf' || each.look === 'parcel' || each.look === 'edge'
        ? ''
        : `<path class="ground" d="${outline}"/>`;
    return `${ground}${fillSvg(each.look, rings)}<path class="${each.look}" d="${outline}"/>`;
  });
  const passes = (map.passes ?? []).map((each) => passesSvg(each, view));
  const route = map.route.length < 2 ? '' : `<path class="route" d="${path(map.route.map(view.spot), false)}"/>`;
  const points = map.points.map((each) => (isMoved(each) ? '' : pointSvg(each, view.spot(each.at))));
  points.push(stopsSvg(map.points, view));
  return `<svg class="map${map.size === 'large' ? ' large' : ''}" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${PAGE.map}">${MARKS}${pictures.join('')}${areas.join('')}${passes.join('')}${route}${points.join('')}${scaleBar(view.pixelsPerFoot, view.frame, map.units)}${legend}${northArrow(WIDTH)}</svg>`;
}

function spotsOf(geometry: AreaGeometry, view: View): Rings {
  return ringsOf(geometry).map((ring) => ring.map(view.spot));
}

function outlineOf(rings: Rings): string {
  return rings.map((ring) => path(ring, true)).join('');
}

function ringsOf(geometry: AreaGeometry): readonly (readonly Position[])[] {
  return geometry.type === 'Polygon' ? geometry.coordinates : geometry.coordinates.flat();
}

/** The map and its legend, which stands beside or below, wherever it leaves the map the larger. */
function layOut(
  places: readonly Position[],
  legend: MapLegend,
  height: number,
): { readonly view: View; readonly legend: string } | null {
  if (legend.length === 0) {
    const alone = fitView(places, WIDTH, height);
    return alone === null ? null : { view: alone, legend: '' };
  }
  const left = WIDTH - LEGEND_WIDTH;
  const beside = fitView(places, left, height);
  const top = height - legendHeight(legend, WIDTH);
  const below = fitView(places, WIDTH, top);
  if (beside === null || below === null) return null;
  return below.pixelsPerFoot > beside.pixelsPerFoot
    ? { view: below, legend: legendBelow(legend, top, WIDTH) }
    : { view: beside, legend: legendBeside(legend, left, height) };
}

type View = { readonly spot: (at: Position) => Spot; readonly pixelsPerFoot: number; readonly frame: Frame };

/** Fits places into the picture. Local scaling is enough here: nothing is measured off a printed map. */
function fitView(places: readonly Position[], width: number, height: number): View | null {
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
  const pixelsPerFoot = Math.min((width - 2 * MARGIN) / wide, (height - MARGIN - marginBelow(height)) / high);
  const middle: Spot = [(west + east) / 2, (south + north) / 2];
  return {
    pixelsPerFoot,
    frame: { width, height },
    spot: ([lon, lat]) => [
      width / 2 + (lon - middle[0]) * shrink * FEET_PER_DEGREE * pixelsPerFoot,
      (height + MARGIN - marginBelow(height)) / 2 - (lat - middle[1]) * FEET_PER_DEGREE * pixelsPerFoot,
    ],
  };
}

function path(spots: readonly Spot[], closed: boolean): string {
  const steps = spots.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`);
  return steps.join('') + (closed ? 'Z' : '');
}

/** A name that would run out of the map is cut. */
function shortened(label: string): string {
  const letters = [...label];
  return letters.length > MOST_LETTERS ? `${letters.slice(0, MOST_LETTERS).join('')}…` : label;
}

function pointSvg(point: MapPoint, [x, y]: Spot): string {
  const label = escapeHtml(shortened(point.label));
  const at = `translate(${x.toFixed(1)} ${y.toFixed(1)})`;
  if (point.look === 'name') return `<g transform="${at}"><text class="name" y="5">${label}</text></g>`;
  if (point.look === 'gate')
    return `<g transform="${at}"><path class="gate" d="M-7 -5v10M7 -5v10"/><text class="small name" y="-9">${label}</text></g>`;
  return `<g transform="${at}"><circle class="${point.look}" r="12"/><text y="5">${label}</text></g>`;
}

/** Lines of the passes; what is gone over twice is dotted, what is not reached is crossed so closely that it prints dark. */
function passesSvg({ legs, overlap, missed }: MapPasses, view: View): string {
  const left = spotsOf(missed, view);
  const lines = legs.map(({ kind, positions }) => {
    const spots = positions.map(view.spot);
    const [from, to] = spots;
    // The arrow of a swath hangs on a corner in its middle.
    const isSwath = kind === 'swath' && from !== undefined && to !== undefined;
    const drawn = isSwath ? [from, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const, to] : spots;
    return `<path class="pass-${kind}" d="${path(drawn, false)}"/>`;
  });
  const twice = fillSvg('twice', spotsOf(overlap, view));
  return `${twice}${lines.join('')}${fillSvg('missed', left)}<path class="pass-missed" d="${outlineOf(left)}"/>`;
}

/** Labels that make way for each other. */
const isMoved = ({ look }: MapPoint): boolean => look === 'stop' || look === 'fill-point';

/** Numbers of stops and fill points, moved apart where they would cover each other; a line leads from a moved one to its place. */
function stopsSvg(points: readonly MapPoint[], view: View): string {
  const stops = points.filter(isMoved);
  const radius = stops.length < MANY_STOPS ? 12 : 11;
  const places = stops.map((each) => view.spot(each.at));
  const spots = spreadLabels(places, radius, view.frame);
  const leaders = places.map((place, index) => leaderSvg(place, spots[index] ?? place));
  const circles = stops.map((each, index) => {
    const [x, y] = spots[index] ?? view.spot(each.at);
    const square = `<rect class="fill-point" x="${-radius}" y="${-radius}" width="${2 * radius}" height="${2 * radius}"/>`;
    const shape = each.look === 'stop' ? `<circle class="stop" r="${radius}"/>` : square;
    const label = `${shape}<text y="6">${escapeHtml(each.label)}</text>`;
    return `<g transform="translate(${x.toFixed(1)} ${y.toFixed(1)})">${label}</g>`;
  });
  return leaders.join('') + circles.join('');
}

function leaderSvg(place: Spot, spot: Spot): string {
  if (Math.hypot(spot[0] - place[0], spot[1] - place[1]) < LEADER_WORTH_DRAWING) return '';
  const [x, y] = place;
  return `<path class="leader" d="${path([place, spot], false)}"/><circle class="place" cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="2.4"/>`;
}

const MARKS =
  '<defs><marker id="driven" markerUnits="userSpaceOnUse" markerWidth="8" markerHeight="8" refX="4" refY="4" orient="auto"><path d="M1.5 1L6 4L1.5 7" class="driven"/></marker></defs>';
