import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { distanceMetres } from '../../core/geometry/index.ts';
import { type AddressAnswer, findAddress, indexStreets, readStreets } from '../../core/places/index.ts';

/** Public data that lies beside the repository and is not part of it. Where it is missing these tests are skipped. */
const folder = fileURLToPath(new URL('../../../shared/geodata/cambridge/', import.meta.url));
const STREETS = `${folder}street_centerlines_addr_ranges.geojson`;
const ADDRESSES = `${folder}landmark_addresses_half.csv`;
const isThere = existsSync(STREETS) && existsSync(ADDRESSES);
if (!isThere) console.log('skipped: ../shared/geodata/cambridge has no streets or addresses');

type Outcome = { readonly address: string; readonly answer: AddressAnswer; readonly errorM: number };

/** City of Cambridge (MA), ODC PDDL 1.0: street lines with address ranges, and addresses of landmarks with their places. */
describe.skipIf(!isThere)('addresses of Cambridge by its address ranges', () => {
  let outcomes: readonly Outcome[];

  beforeAll(() => {
    const streets = readStreets(JSON.parse(readFileSync(STREETS, 'utf8')), 'streets');
    if (!streets.ok) throw new Error(streets.error.detail);
    const index = indexStreets(streets.value.pieces);
    const rows = [...readFileSync(ADDRESSES, 'utf8').matchAll(/^"[^\n]*","([^"]*)",([-\d.]+),([-\d.]+)\r?$/gm)];
    outcomes = rows.map(([, address = '', lat, lon]) => {
      const answer = findAddress(index, address);
      const errorM = answer.kind === 'placed' ? distanceMetres(answer.at, [Number(lon), Number(lat)]) : Number.NaN;
      return { address, answer, errorM };
    });
  });

  const errors = (): readonly number[] =>
    outcomes.flatMap(({ errorM }) => (Number.isNaN(errorM) ? [] : [errorM])).sort((a, b) => a - b);

  it('places at least 85 % of them', () => {
    expect(outcomes.length).toBeGreaterThan(100);
    expect(errors().length / outcomes.length).toBeGreaterThanOrEqual(0.85);
  });

  it('is off by 30 m or less in the middle, and by 90 m or less nine times of ten', () => {
    const sorted = errors();
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(30);
    expect(sorted[Math.floor(sorted.length * 0.9)]).toBeLessThanOrEqual(90);
  });

  it('gives a reason for each that it does not place', () => {
    for (const { address, answer } of outcomes) {
      if (answer.kind === 'not-placed') expect(answer.reason, address).not.toBe('');
    }
  });
});
