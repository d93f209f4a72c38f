import type { AreaGeometry, Exclusion, Property, Zone } from '../book/index.ts';
import {
  boxCentre,
  type DegreesBox,
  degreesBox,
  distanceMetres,
  type GeometryFault,
  grow,
  joinBoxes,
  type LocalPlane,
  localPlane,
  type Region,
  readOutline,
} from '../geometry/index.ts';
import { feetToMetres, quantity } from '../units/index.ts';
import { type CutZone, cutZones } from './cut.ts';
import { farZoneFault } from './words.ts';

/** A zone of a property as ground, or why there is none. */
export type PreparedZone =
  | { readonly kind: 'drawn'; readonly zone: Zone; readonly cut: CutZone; readonly faults: readonly GeometryFault[] }
  | { readonly kind: 'refused'; readonly zone: Zone; readonly faults: readonly GeometryFault[] }
  | { readonly kind: 'stated'; readonly zone: Zone; readonly areaSqFt: number };

/** An exclusion grown by its keep-away distance; `grown` is null where it is refused or lies far from the zones. */
export type PreparedExclusion = {
  readonly exclusion: Exclusion;
  readonly grown: Region | null;
  readonly plain: Region | null;
  readonly isFar: boolean;
  readonly faults: readonly GeometryFault[];
};

/** A property in its own plane. */
export type PreparedProperty = {
  readonly plane: LocalPlane;
  readonly zones: readonly PreparedZone[];
  readonly exclusions: readonly PreparedExclusion[];
};

/** Zones of one property farther apart than this are refused; exclusions farther off cannot touch it. */
const FARTHEST_APART_M = 10_000;

/** Properties never change, so what was made of one is kept as long as the property itself. */
const kept = new WeakMap<Property, PreparedProperty>();

/** Puts a property into its plane and cuts its zones, and keeps the result for the next question about the property. */
export function prepareProperty(property: Property): PreparedProperty {
  const prepared = prepareOnce(property);
  kept.set(property, prepared);
  return prepared;
}

/** The same for a single question: nothing is kept, which matters where thousands of properties go by. */
export function prepareOnce(property: Property): PreparedProperty {
  return kept.get(property) ?? make(property);
}

type Checked = { readonly box: DegreesBox | null; readonly fault: GeometryFault | null };

function make(property: Property): PreparedProperty {
  const checkedZones = checkZones(property.zones);
  const checkedExclusions = property.exclusions.map((each) => check(each.geometry));
  const boxes = checkedZones.flatMap((each) => each?.box ?? []);
  const anchor = joinAll(boxes) ?? checkedExclusions.find((each) => each.box !== null)?.box ?? null;
  const plane = localPlane(anchor === null ? property.parking : boxCentre(anchor));
  const exclusions = property.exclusions.map((each, index) =>
    prepareExclusion(each, checkedExclusions[index] ?? { box: null, fault: null }, plane),
  );
  return { plane, zones: prepareZones(property.zones, checkedZones, exclusions, plane), exclusions };
}

function check(geometry: AreaGeometry): Checked {
  const checked = degreesBox(geometry);
  return 'fault' in checked ? { box: null, fault: checked.fault } : { box: checked.box, fault: null };
}

/** Bounds of the drawn zones; null for stated ones. A zone far from the first one gets a fault. */
function checkZones(zones: readonly Zone[]): readonly (Checked | null)[] {
  let first: { readonly zone: Zone; readonly box: DegreesBox } | null = null;
  const all: (Checked | null)[] = [];
  for (const zone of zones) {
    if (zone.shape.kind === 'stated') {
      all.push(null);
      continue;
    }
    const checked = check(zone.shape.geometry);
    if (checked.box !== null) first ??= { zone, box: checked.box };
    const apart =
      checked.box === null || first === null ? 0 : distanceMetres(boxCentre(first.box), boxCentre(checked.box));
    all.push(
      apart > FARTHEST_APART_M && first !== null ? { box: null, fault: farZoneFault(first.zone.name, apart) } : checked,
    );
  }
  return all;
}

function joinAll(boxes: readonly DegreesBox[]): DegreesBox | null {
  const [first, ...rest] = boxes;
  return first === undefined ? null : rest.reduce(joinBoxes, first);
}

function prepareExclusion(exclusion: Exclusion, checked: Checked, plane: LocalPlane): PreparedExclusion {
  if (checked.box === null) {
    return { exclusion, grown: null, plain: null, isFar: false, faults: checked.fault === null ? [] : [checked.fault] };
  }
  if (distanceMetres(boxCentre(checked.box), plane.origin) > 2 * FARTHEST_APART_M) {
    return { exclusion, grown: null, plain: null, isFar: true, faults: [] };
  }
  const outline = readOutline(exclusion.geometry, plane);
  if (outline.kind === 'refused') return { exclusion, grown: null, plain: null, isFar: false, faults: outline.faults };
  const grown = grow(outline.net, feetToMetres(quantity<'ft'>(exclusion.keepAwayFt)));
  return { exclusion, grown, plain: outline.net, isFar: false, faults: outline.faults };
}

function prepareZones(
  zones: readonly Zone[],
  checked: readonly (Checked | null)[],
  exclusions: readonly PreparedExclusion[],
  plane: LocalPlane,
): readonly PreparedZone[] {
  const outlines = zones.map((zone, index) => {
    const box = checked[index]?.box ?? null;
    return zone.shape.kind === 'drawn' && box !== null ? readOutline(zone.shape.geometry, plane) : null;
  });
  const usable = outlines.map((each) => (each?.kind === 'outline' ? each : null));
  const cuts = cutZones(
    usable,
    exclusions.flatMap((each) => each.grown ?? []),
  );
  return zones.map((zone, index): PreparedZone => {
    if (zone.shape.kind === 'stated') return { kind: 'stated', zone, areaSqFt: zone.shape.areaSqFt };
    const outline = outlines[index] ?? null;
    const cut = cuts[index] ?? null;
    if (outline !== null && cut !== null) return { kind: 'drawn', zone, cut, faults: outline.faults };
    const fault = checked[index]?.fault;
    return { kind: 'refused', zone, faults: outline?.faults ?? (fault ? [fault] : []) };
  });
}
