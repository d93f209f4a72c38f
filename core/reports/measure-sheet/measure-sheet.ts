import type { Exclusion } from '../../book/index.ts';
import { formatArea, formatLength, formatSlope, formatWidth } from '../../units/index.ts';
import { type Block, left, right, type Sheet } from '../blocks.ts';
import { CAUTION_WORDS } from '../cautions.ts';
import type { PropertyInput } from '../input.ts';
import { areasOf } from '../run-sheet/index.ts';

/** A measured lawn: zones with their areas and how they were found, what is left out, gates, cautions and a map. */
export function measureSheet(input: PropertyInput): Sheet {
  const { book, property, measure } = input;
  const treatable = measure.treatableSqFt === null ? 'not measured' : formatArea(measure.treatableSqFt, book.units);
  return {
    id: `measure-sheet ${property.id}`,
    title: `Measure sheet: ${property.name}`,
    subtitle: property.address,
    invented: book.invented,
    blocks: [
      {
        kind: 'facts',
        facts: [
          { label: 'Treatable turf', value: treatable },
          { label: 'Left out', value: formatArea(measure.exclusionsSqFt, book.units) },
          { label: 'Measured', value: property.measuredOn ?? 'date not entered' },
          {
            label: 'Mind',
            value: property.cautions.map((each) => CAUTION_WORDS[each]).join(', ') || 'nothing entered',
          },
        ],
      },
      map(input),
      zones(input),
      ...(property.exclusions.length === 0 ? [] : [exclusions(input)]),
      ...(property.gates.length === 0 ? [] : [gates(input)]),
      { kind: 'note', text: HOW_MEASURED },
      ...measure.issues.map((each): Block => ({ kind: 'note', text: `${each.where}: ${each.message}` })),
    ],
  };
}

const HOW_MEASURED =
  'Areas of outlines are on the ellipsoid, overlaps counted once, ground left out and its keep-away distance cut off, slope added. A stated area is taken as it was written down.';

function map({ book, property }: PropertyInput): Block {
  const gatePoints = property.gates.flatMap((gate) =>
    gate.at === undefined
      ? []
      : [{ look: 'gate' as const, at: gate.at, label: formatWidth(gate.clearWidthIn, book.units) }],
  );
  return {
    kind: 'map',
    areas: areasOf(property),
    points: [...gatePoints, { look: 'parking', at: property.parking, label: 'P' }],
    route: [],
    units: book.units,
  };
}

function zones({ book, measure }: PropertyInput): Block {
  const area = (value: number | null): string => (value === null ? 'not measured' : formatArea(value, book.units));
  return {
    kind: 'table',
    columns: [left('Zone'), left('Found by'), right('On the map'), right('Slope'), right('To treat')],
    rows: [
      ...measure.zones.map((zone) => [
        zone.name,
        zone.source === 'drawn' ? 'outline' : 'stated area',
        area(zone.planAreaSqFt),
        formatSlope(zone.slopeDeg),
        area(zone.areaSqFt),
      ]),
      { look: 'sum', lead: ['All zones'], text: '', tail: [area(measure.treatableSqFt)] },
    ],
  };
}

function exclusions({ book, property }: PropertyInput): Block {
  const keepAway = (each: Exclusion): string =>
    each.keepAwayFt > 0 ? formatLength(each.keepAwayFt, book.units) : 'none';
  return {
    kind: 'table',
    columns: [left('Not treated'), left('What it is'), right('Kept away')],
    rows: property.exclusions.map((each) => [each.name === '' ? each.id : each.name, each.what, keepAway(each)]),
  };
}

function gates({ book, property }: PropertyInput): Block {
  return {
    kind: 'table',
    columns: [left('Gate'), right('Clear width'), left('Lock'), left('Leads to')],
    rows: property.gates.map((each) => [
      each.name,
      formatWidth(each.clearWidthIn, book.units),
      each.locked ? 'locked' : 'open',
      property.zones
        .filter((zone) => zone.gateIds.includes(each.id))
        .map((zone) => zone.name)
        .join(', '),
    ]),
  };
}
