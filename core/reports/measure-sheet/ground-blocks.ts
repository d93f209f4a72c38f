import type { Exclusion, Property } from '../../book/index.ts';
import { workedArea } from '../../field-work/index.ts';
import { centreOf, outlineArea } from '../../geometry/index.ts';
import type { PassPicture } from '../../passes/index.ts';
import {
  formatArea,
  formatLength,
  formatNumber,
  formatWidth,
  squareMetresToSquareFeet,
  type UnitSystem,
} from '../../units/index.ts';
import { type Block, left, type MapPoint, right } from '../blocks.ts';
import type { PropertyInput } from '../input.ts';
import { areasOf } from '../run-sheet/index.ts';
import { MEASURE_SHEET } from '../texts/index.ts';
import { foundBy, slopeWords } from './words.ts';

/** The plan: lot, zones with their names, what is left out, gates with their widths, hose stands (H), parking point (P). */
export function planBlock({ book, property, passes }: PropertyInput): Block {
  const gates = property.gates.flatMap((gate): readonly MapPoint[] =>
    gate.at === undefined ? [] : [{ look: 'gate', at: gate.at, label: formatWidth(gate.clearWidthIn, book.units) }],
  );
  const hoses = property.zones.flatMap(({ hoseStand }): readonly MapPoint[] =>
    hoseStand === undefined ? [] : [{ look: 'stop', at: hoseStand, label: MEASURE_SHEET.hoseMark }],
  );
  const parcel = property.parcel === undefined ? [] : [{ look: 'parcel' as const, geometry: property.parcel }];
  return {
    kind: 'map',
    areas: [...parcel, ...areasOf(property)],
    points: [
      ...names(property),
      ...gates,
      ...hoses,
      { look: 'parking', at: property.parking, label: MEASURE_SHEET.parkingMark },
    ],
    route: [],
    ...(passes == null
      ? {}
      : { passes: passes.pictures.map(({ legs, overlap, handTrim }) => ({ legs, overlap, missed: handTrim })) }),
    units: book.units,
  };
}

/** What the passes on the plan come to, and how they are drawn. */
export function passesBlock({ book, passes }: PropertyInput): readonly Block[] {
  if (passes == null || passes.pictures.length === 0) return [];
  const sum = (of: (picture: PassPicture) => number): number =>
    passes.pictures.reduce((all, each) => all + of(each), 0);
  const [trims, swaths] = [sum((each) => each.trimCount), sum((each) => each.swathCount)];
  const byHand = formatArea(
    sum((each) => each.handTrimSqFt),
    book.units,
  );
  const text = MEASURE_SHEET.passes(passes.by, trims, swaths, formatNumber(sum((each) => each.minutes)), byHand);
  return [{ kind: 'note', text }];
}

/** Names of the zones in their middles, where there are several to tell apart. */
function names({ zones }: Property): readonly MapPoint[] {
  const drawn = zones.flatMap(({ name, shape }): readonly MapPoint[] => {
    const at = shape.kind === 'drawn' ? centreOf(shape.geometry) : null;
    return at === null ? [] : [{ look: 'name', at, label: name }];
  });
  return drawn.length > 1 ? drawn : [];
}

export function zonesBlock({ book, property, measure }: PropertyInput): Block {
  const area = (value: number | null): string =>
    value === null ? MEASURE_SHEET.notMeasured : formatArea(value, book.units);
  const error = (value: number | null): string =>
    value === null ? MEASURE_SHEET.notKnown : formatArea(value, book.units);
  const words = MEASURE_SHEET.zones;
  const zoneOf = new Map(property.zones.map((each) => [each.id, each]));
  return {
    kind: 'table',
    columns: [
      left(words.zone),
      left(words.foundBy),
      right(words.onMap),
      left(words.slope),
      right(words.toTreat),
      right(words.error),
    ],
    rows: [
      ...measure.zones.map((each) => {
        const zone = zoneOf.get(each.zoneId);
        return [
          each.name,
          zone === undefined ? each.source : foundBy(zone),
          each.source === 'stated' ? '' : area(each.planAreaSqFt),
          zone === undefined ? '' : slopeWords(zone),
          area(each.areaSqFt),
          error(each.errorSqFt),
        ];
      }),
      { look: 'sum', lead: [words.all], text: '', tail: [area(measure.treatableSqFt), error(measure.errorSqFt)] },
    ],
  };
}

/** The arithmetic behind areas measured by tape or wheel. */
export function workingBlocks({ book, property }: PropertyInput): readonly Block[] {
  return property.zones.flatMap(({ name, shape }): readonly Block[] => {
    if (shape.kind !== 'stated' || shape.working === undefined) return [];
    const worked = workedArea(shape.working, book.units);
    return worked.ok ? [{ kind: 'note', text: `${name}: ${worked.value.lines.join('; ')}` }] : [];
  });
}

export function exclusionsBlock({ book, property }: PropertyInput): Block {
  const words = MEASURE_SHEET.exclusions;
  return {
    kind: 'table',
    columns: [left(words.name), left(words.what), right(words.area), right(words.keptAway)],
    rows: property.exclusions.map((each) => [
      each.name === '' ? each.what : each.name,
      each.what,
      exclusionArea(each, book.units),
      each.keepAwayFt > 0 ? formatLength(each.keepAwayFt, book.units) : words.none,
    ]),
  };
}

function exclusionArea({ geometry }: Exclusion, units: UnitSystem): string {
  const { areaSqM } = outlineArea(geometry);
  return areaSqM === null ? MEASURE_SHEET.notMeasured : formatArea(squareMetresToSquareFeet(areaSqM), units);
}

export function gatesBlock({ book, property }: PropertyInput): Block {
  const words = MEASURE_SHEET.gates;
  return {
    kind: 'table',
    columns: [left(words.gate), right(words.width), left(words.lock), left(words.leadsTo)],
    rows: property.gates.map((each) => [
      each.name,
      formatWidth(each.clearWidthIn, book.units),
      each.locked ? words.locked : words.open,
      property.zones
        .filter((zone) => zone.gateIds.includes(each.id))
        .map((zone) => zone.name)
        .join(', '),
    ]),
  };
}
