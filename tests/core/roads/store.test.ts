import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../core/base/index.ts';
import { crc32 } from '../../../core/formats/index.ts';
import {
  ROAD_SETTINGS,
  readRoadMap,
  roadNetwork,
  roadTable,
  snapPlaces,
  writeRoadMap,
} from '../../../core/roads/index.ts';
import { casesOf } from '../../support/cases.ts';
import { mutate } from '../../support/mutate.ts';
import { randomTown } from './random-town.ts';
import { at, mapOf } from './town.ts';

const map = await mapOf(randomTown(createRandom(3), 5));
const stored = writeRoadMap(map);

/** The bytes with another end, and a check sum that fits. */
function sealed(bytes: Uint8Array): Uint8Array {
  const copy = bytes.slice();
  new DataView(copy.buffer).setUint32(copy.length - 4, crc32(copy.subarray(0, copy.length - 4)), true);
  return copy;
}

const verdict = (bytes: Uint8Array): string => {
  const reading = readRoadMap(bytes, 'book.roads');
  return reading.ok ? 'was read' : `${reading.error.code}: ${reading.error.detail}`;
};

describe('stored maps', () => {
  it('are read back the same, from any place in memory', () => {
    expect(readRoadMap(stored, 'x')).toEqual({ ok: true, value: map });
    const shifted = new Uint8Array(stored.length + 3);
    shifted.set(stored, 3);
    expect(readRoadMap(shifted.subarray(3), 'x')).toEqual({ ok: true, value: map });
    expect(writeRoadMap(map)).toEqual(stored);
  });

  it('keep letters outside ASCII', () => {
    const about = { ...map.about, writtenBy: 'Grüße 😀 "\\' };
    expect(readRoadMap(writeRoadMap({ ...map, about }), 'x')).toMatchObject({ ok: true, value: { about } });
  });

  it('are refused where a bit is wrong, or bytes are missing or too many', () => {
    const random = createRandom(9);
    for (let count = 0; count < casesOf(300, 30); count += 1) {
      const bytes = stored.slice();
      const place = random.below(bytes.length);
      bytes[place] = bytes[place]! ^ (1 << random.below(8));
      expect(verdict(bytes), `bit of byte ${place}`).toMatch(/^(format-invalid|format-unknown|newer-version): /);
    }
    for (let length = 0; length < stored.length; length += 37) {
      expect(verdict(stored.subarray(0, length))).toMatch(/^format-/);
    }
    expect(verdict(Uint8Array.from([...stored, 0]))).toContain('its check sum is wrong');
    expect(verdict(sealed(Uint8Array.from([...stored, 0, 0, 0, 0])))).toContain('longer or shorter');
  });

  it('are refused where they are of a newer version, or of none', () => {
    const version = (number: number): Uint8Array => {
      const bytes = stored.slice();
      new DataView(bytes.buffer).setUint32(8, number, true);
      return sealed(bytes);
    };
    expect(verdict(version(2))).toContain('newer-version');
    expect(verdict(version(0))).toContain('format-invalid');
  });

  it.each([
    [
      'an edge',
      { edges: { ...map.edges, to: map.edges.to.map((each, place) => (place === 3 ? 25 : each)) } },
      'a road ends at no junction',
    ],
    [
      'a shape',
      { edges: { ...map.edges, shapeStart: map.edges.shapeStart.map((each, place) => (place === 4 ? 9999 : each)) } },
      'out of order',
    ],
    ['a class', { edges: { ...map.edges, roadClass: map.edges.roadClass.map(() => 18) } }, 'unknown class'],
    ['access', { edges: { ...map.edges, access: map.edges.access.map(() => 4) } }, 'for nobody known'],
    ['a length', { edges: { ...map.edges, lengthDm: map.edges.lengthDm.map(() => 4e9) } }, 'longer than any'],
    [
      'a junction',
      { junctions: { ...map.junctions, lat: map.junctions.lat.map(() => 1_000_000_000) } },
      'lies nowhere',
    ],
    [
      'a restriction',
      { restrictions: { ...map.restrictions, via: map.restrictions.via.map(() => 999) } },
      'for no road',
    ],
    ['a fingerprint', { fingerprint: '0123456789abcdef' }, 'its fingerprint is wrong'],
    ['a head', { about: { ...map.about, licence: 5 as never } }, 'its head cannot be read'],
  ])('are refused where %s leads out of them, with a check sum that fits', (_, part, message) => {
    expect(map.restrictions.via.length).toBeGreaterThan(0);
    expect(verdict(writeRoadMap({ ...map, ...part }))).toContain(message);
  });

  it('never lead to a crash, whatever was changed: what is read can be driven on', () => {
    let read = 0;
    for (let seed = 0; seed < casesOf(400, 40); seed += 1) {
      const reading = readRoadMap(sealed(mutate(stored, seed)), 'x');
      if (!reading.ok) continue;
      read += 1;
      const network = roadNetwork(reading.value, ROAD_SETTINGS);
      roadTable(
        network,
        snapPlaces(
          network,
          [1, 2, 3].map((id) => ({ id: `${id}`, at: at(100 * id, 150) })),
        ),
      );
    }
    expect(read).toBeLessThan(400);
  });
});
