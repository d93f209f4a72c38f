import type { Action } from '../../../core/edit/index.ts';

/** One edit that touches a member and two tables, so that a half-stored one would be seen. */
export function numberedEdit(number: number, ballast = ''): Action {
  const zones = [
    { id: 'z', name: 'Lawn', shape: { kind: 'stated', areaSqFt: number, method: '' }, slopeDeg: 0, gateIds: [] },
  ];
  const property = { id: `p${number}`, name: `Lot ${number}`, address: '', parking: [0, 0], zones, gates: [] };
  // A member that the program does not know: it is kept, and its size has no limit.
  const record = ballast === '' ? property : { ...property, ballast };
  return {
    kind: 'several',
    label: `Edit ${number}`,
    actions: [
      { kind: 'set', changes: { note: `${number}` } },
      { kind: 'put', table: 'properties', record: record as never },
    ],
  };
}
