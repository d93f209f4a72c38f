import { type AppError, type Issue, issue, type Result } from '../../base/index.ts';
import type { Position, Property } from '../../book/index.ts';
import { positionFault } from '../../geometry/index.ts';
import { parseArea, parseSlope, parseWidth } from '../../units/index.ts';
import type { Columns } from './columns.ts';
import { readDegrees } from './degrees.ts';
import type { TableRow } from './table.ts';

export type LawnReading = { readonly property: Property | null; readonly issues: readonly Issue[] };

const LONGEST_ID = 120;
const LONGEST_NAME = 200;

/** Reads one row; `property` is null where it is rejected, and then one of the issues is an error. */
export function readLawn(row: TableRow, columns: Columns, where: string): LawnReading {
  if (row.fault !== null) {
    return reject(
      'row-malformed',
      where,
      `The row cannot be read: ${row.fault}. Put texts with commas into quotation marks.`,
    );
  }
  const cell = (column: number): string => (column < 0 ? '' : (row.cells[column] ?? ''));
  const place = readPlace(cell(columns.latitude), cell(columns.longitude));
  if ('fault' in place) return reject(place.fault.code, where, place.fault.message);
  const area = optional(cell(columns.area), (text) => parseArea(withUnit(text, columns.areaUnit)));
  const gate = optional(cell(columns.gateWidth), (text) => parseWidth(text));
  const slope = optional(cell(columns.slope), (text) => parseSlope(text));
  for (const [name, reading] of [
    ['area', area],
    ['gate width', gate],
    ['slope', slope],
  ] as const) {
    if ('error' in reading) return reject(reading.error.code, where, fieldMessage(name, reading.error));
  }
  const areaSqFt = 'value' in area ? area.value : null;
  const gateIn = 'value' in gate ? gate.value : null;
  const slopeDeg = ('value' in slope ? slope.value : null) ?? 0;
  if (areaSqFt === 0) return reject('area-zero', where, 'The area is 0. Enter the turf area, or leave the cell empty.');
  if (gateIn === 0)
    return reject('gate-width-missing', where, 'The gate width is 0. Enter inches, or leave the cell empty.');
  const name = cell(columns.name).slice(0, LONGEST_NAME);
  const id = (cell(columns.id) || `lawn-${row.number}`).slice(0, LONGEST_ID);
  const gates = gateIn === null ? [] : [{ id: 'gate', name: 'gate', clearWidthIn: gateIn as number, locked: false }];
  const shape = { kind: 'stated' as const, areaSqFt: areaSqFt ?? 0, method: 'imported table' };
  const property: Property = {
    id,
    name: name === '' ? cell(columns.address).slice(0, LONGEST_NAME) || id : name,
    address: cell(columns.address).slice(0, 4000),
    parking: place.at,
    noTrailer: false,
    gates,
    zones:
      areaSqFt === null ? [] : [{ id: 'lawn', name: 'lawn', shape, slopeDeg, gateIds: gates.map((each) => each.id) }],
    exclusions: [],
    cautions: [],
    note: '',
  };
  if (areaSqFt !== null) return { property, issues: [] };
  const message = 'The row has no area, so the property has no zone yet. Draw it, or enter its area.';
  return { property, issues: [issue('warning', 'property-without-zones', where, message)] };
}

type Fault = { readonly code: string; readonly message: string };

function readPlace(latitudeText: string, longitudeText: string): { readonly at: Position } | { readonly fault: Fault } {
  const latitude = readDegrees(latitudeText);
  const longitude = readDegrees(longitudeText);
  if (latitude === null || longitude === null) {
    const name = latitude === null ? 'latitude' : 'longitude';
    const text = latitude === null ? latitudeText : longitudeText;
    const what = text === '' ? `The ${name} is missing.` : `The ${name} "${text.slice(0, 40)}" is no number.`;
    return {
      fault: { code: 'place-unreadable', message: `${what} Enter degrees, for instance 39.9612 and -82.9988.` },
    };
  }
  if (latitude === 0 && longitude === 0) {
    return {
      fault: { code: 'place-unreadable', message: 'Latitude and longitude are both 0. Look the place up once more.' },
    };
  }
  const wrong = positionFault([longitude, latitude]);
  if (wrong === null) return { at: [longitude, latitude] };
  const isSwapped = positionFault([latitude, longitude]) === null;
  const cause = isSwapped ? 'The two columns look swapped.' : 'Enter longitude and latitude in degrees (WGS84).';
  return {
    fault: { code: wrong.code, message: `No lawn lies at latitude ${latitude}, longitude ${longitude}. ${cause}` },
  };
}

function withUnit(text: string, unit: string): string {
  return unit !== '' && /^[\d.,/\s]+$/.test(text) ? `${text} ${unit}` : text;
}

type Reading = { readonly value: number | null } | { readonly error: AppError };

function optional(text: string, read: (text: string) => Result<number>): Reading {
  if (text === '') return { value: null };
  const result = read(text);
  return result.ok ? { value: result.value } : { error: result.error };
}

function fieldMessage(name: string, error: AppError): string {
  return `Column ${name}: ${error.detail} ${error.hint}`;
}

function reject(code: string, where: string, message: string): LawnReading {
  return { property: null, issues: [issue('error', code, where, message)] };
}
