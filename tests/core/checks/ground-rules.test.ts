import { describe, expect, it } from 'vitest';
import type { Book, Property } from '../../../core/book/index.ts';
import { checkBook, type Finding, RULES } from '../../../core/checks/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import { measureProperty } from '../../../core/measure/index.ts';
import { exclusion, property, zone } from '../measure/lawns.ts';
import { BROKEN_GROUND, book, box, crumbs, gateAt, lawn } from './broken-ground.ts';

function find(code: string, of: Book): readonly Finding[] {
  return RULES.find((each) => each.code === code)?.find(of) ?? [];
}

/** The book after the fix of the only finding, and after that is taken back. */
function fixed(code: string, of: Book): { readonly book: Book; readonly undone: Book } {
  const [found] = find(code, of);
  const action = found?.fix?.action(of);
  if (action === null || action === undefined) throw new Error(`${code} offers no fix`);
  const done = applyAction(of, action);
  if (!done.ok) throw new Error(done.error.detail);
  const back = applyAction(done.value.book, done.value.inverse);
  if (!back.ok) throw new Error(back.error.detail);
  return { book: done.value.book, undone: back.value.book };
}

function areaOf(of: Book): number {
  const [first] = of.properties;
  if (first === undefined) throw new Error('no lawn');
  return measureProperty(first).treatableSqFt ?? 0;
}

const elm = lawn('elm', box(0, 0, 100, 50));

describe('properties-overlap', () => {
  it('says how much ground two properties share', () => {
    // 10 ft x 50 ft
    const [found] = find('properties-overlap', book(elm, lawn('oak', box(90, 0, 100, 50))));
    expect(found?.message).toContain('500 ft²');
    expect([found?.propertyId, found?.fix]).toEqual(['oak', undefined]);
  });

  it('is silent about neighbours with a common side, a strip of an inch, and the same outline', () => {
    expect(find('properties-overlap', book(elm, lawn('oak', box(100, 0, 100, 50))))).toEqual([]);
    expect(find('properties-overlap', book(elm, lawn('oak', box(99.9, 0, 100, 50))))).toEqual([]);
    expect(find('properties-overlap', book(elm, { ...elm, id: 'copy' }))).toEqual([]);
  });
});

describe('zone-outside-parcel', () => {
  it('clips a zone to its parcel as one step', () => {
    const start = book({ ...elm, parcel: box(0, 0, 80, 60) });
    expect(find('zone-outside-parcel', start)[0]?.message).toContain('1,000 ft²');
    const { book: clipped, undone } = fixed('zone-outside-parcel', start);
    expect(areaOf(clipped)).toBeCloseTo(4000, 0);
    expect(find('zone-outside-parcel', clipped)).toEqual([]);
    expect(undone).toEqual(start);
  });

  it('keeps what the outline says of itself', () => {
    const shape = {
      kind: 'drawn',
      geometry: box(0, 0, 100, 50),
      outlineErrorFt: 2,
      drawnOver: 'aerial picture',
    } as const;
    const start = book(property([zone('lawn', shape.geometry, { shape })], [], { parcel: box(0, 0, 80, 60) }));
    expect(fixed('zone-outside-parcel', start).book.properties[0]?.zones[0]?.shape).toMatchObject({
      outlineErrorFt: 2,
      drawnOver: 'aerial picture',
    });
  });

  it('offers no fix where nothing would be left, and is silent inside and without a parcel', () => {
    expect(find('zone-outside-parcel', book({ ...elm, parcel: box(300, 0, 80, 60) }))[0]?.fix).toBeUndefined();
    expect(find('zone-outside-parcel', book({ ...elm, parcel: box(0, 0, 100, 50) }))).toEqual([]);
    expect(find('zone-outside-parcel', book(elm))).toEqual([]);
  });
});

describe('gate-off-zone', () => {
  it('moves a gate to the nearest edge as one step', () => {
    const start = book({ ...elm, gates: gateAt(130, 20) });
    expect(find('gate-off-zone', start)[0]?.message).toContain('30 ft');
    const { book: moved, undone } = fixed('gate-off-zone', start);
    expect(find('gate-off-zone', moved)).toEqual([]);
    const [lon] = moved.properties[0]?.gates[0]?.at ?? [0, 0];
    const [edge] = gateAt(100, 20)[0]?.at ?? [0, 0];
    expect(lon).toBeCloseTo(edge, 7);
    expect(undone).toEqual(start);
  });

  it('is silent within 10 ft, inside a zone, at the edge of the lot, and where no zone is drawn', () => {
    expect(find('gate-off-zone', book({ ...elm, gates: gateAt(109, 20) }))).toEqual([]);
    expect(find('gate-off-zone', book({ ...elm, gates: gateAt(50, 25) }))).toEqual([]);
    expect(find('gate-off-zone', book({ ...elm, gates: gateAt(130, 20), parcel: box(-10, -10, 145, 90) }))).toEqual([]);
    expect(find('gate-off-zone', book(property([], [], { gates: gateAt(130, 20) })))).toEqual([]);
  });
});

describe('parking-on-turf', () => {
  const parkedAt = (x: number, y: number) => ({ parking: gateAt(x, y)[0]?.at ?? elm.parking });

  it('moves a parking point in the middle of a lawn to its edge as one step', () => {
    const start = book({ ...elm, ...parkedAt(40, 20) });
    expect(find('parking-on-turf', start)[0]?.message).toContain('20 ft within zone');
    const { book: moved, undone } = fixed('parking-on-turf', start);
    expect(find('parking-on-turf', moved)).toEqual([]);
    const [, latitude] = moved.properties[0]?.parking ?? [0, 0];
    expect(latitude).toBeCloseTo(parkedAt(40, 0).parking[1], 7);
    expect(undone).toEqual(start);
  });

  it('is silent at the street, within 10 ft of the edge, on a drive, and where no zone is drawn', () => {
    expect(find('parking-on-turf', book({ ...elm, ...parkedAt(40, -15) }))).toEqual([]);
    expect(find('parking-on-turf', book({ ...elm, ...parkedAt(40, 9) }))).toEqual([]);
    const drive = { exclusions: [exclusion('drive', box(35, 0, 10, 40))] };
    expect(find('parking-on-turf', book({ ...elm, ...parkedAt(40, 20), ...drive }))).toEqual([]);
    expect(find('parking-on-turf', book(property([], [], parkedAt(40, 20))))).toEqual([]);
  });
});

describe('duplicate-property', () => {
  it('removes an exact copy as one step', () => {
    const start = book(elm, { ...elm, id: 'copy' });
    const { book: after, undone } = fixed('duplicate-property', start);
    expect(after.properties.map((each) => each.id)).toEqual(['elm']);
    expect(undone).toEqual(start);
  });

  it('offers no fix where the two differ', () => {
    const other = { ...elm, id: 'copy', note: 'Bell is broken' };
    const [found] = find('duplicate-property', book(elm, other));
    expect(found?.code).toBe('duplicate-property');
    expect(found?.fix).toBeUndefined();
  });

  it('does nothing where the copy was changed or is named by a round since', () => {
    const start = book(elm, { ...elm, id: 'copy' });
    const fix = find('duplicate-property', start)[0]?.fix;
    expect(fix?.action(book(elm, { ...elm, id: 'copy', note: 'new' }))).toBeNull();
    expect(fix?.action(book(elm))).toBeNull();
    const round = { propertyIds: ['copy'], skipped: [] };
    expect(fix?.action({ ...start, rounds: [round] as never })).toBeNull();
  });

  it('takes two lawns at one parking point for two, where their ground differs', () => {
    expect(find('duplicate-property', book(elm, lawn('oak', box(0, 60, 100, 50))))).toEqual([]);
  });
});

describe('part-tiny', () => {
  it('leaves crumbs out as one step', () => {
    const start = book(lawn('elm', crumbs));
    const { book: after, undone } = fixed('part-tiny', start);
    expect(after.properties[0]?.zones[0]?.shape).toMatchObject({ geometry: { type: 'Polygon' } });
    expect(areaOf(after)).toBeCloseTo(5000, 0);
    expect(undone).toEqual(start);
  });

  it('offers no fix where nothing would be left', () => {
    expect(find('part-tiny', book(lawn('elm', box(0, 0, 3, 3))))[0]?.fix).toBeUndefined();
    // 3 ft x 4 ft are more than 10 ft2
    expect(find('part-tiny', book(lawn('elm', box(0, 0, 3, 4))))).toEqual([]);
  });
});

describe('area-off-stated', () => {
  const card = (statedAreaSqFt: number, outlineErrorFt?: number): Book => {
    const geometry = box(0, 0, 100, 50);
    const shape = { kind: 'drawn', geometry, ...(outlineErrorFt === undefined ? {} : { outlineErrorFt }) } as const;
    return book(property([zone('lawn', geometry, { shape, statedAreaSqFt })]));
  };

  it('holds the difference against 5 % and against the likely error', () => {
    // 5,000 ft2 drawn: 4 % and 25 % off; 300 ft of edge x 4 ft are 1,200 ft2 of error
    expect(find('area-off-stated', card(4800))).toEqual([]);
    expect(find('area-off-stated', card(4000))[0]?.message).toContain('25 % more than the stated 4,000 ft²');
    expect(find('area-off-stated', card(4000, 4))).toEqual([]);
    expect(find('area-off-stated', card(4000, 1))[0]?.message).toContain('5,000 ft² ± 300 ft²');
  });
});

describe('area-off-working', () => {
  it('takes the area that the field work gives', () => {
    const [start] = BROKEN_GROUND['area-off-working'] ?? [];
    if (start === undefined) throw new Error('no counter-example');
    const { book: after, undone } = fixed('area-off-working', start);
    // 50 ft x 30 ft
    expect(areaOf(after)).toBe(1500);
    expect(find('area-off-working', after)).toEqual([]);
    expect(undone).toEqual(start);
  });
});

describe('exclusion-cuts-nothing', () => {
  it('is silent where the strip around an exclusion cuts turf', () => {
    const beside = (keepAwayFt: number) =>
      book(property([zone('lawn', box(0, 0, 100, 50))], [exclusion('pool', box(101, 0, 20, 20), { keepAwayFt })]));
    expect(find('exclusion-cuts-nothing', beside(2))).toEqual([]);
    // Without its strip it lies apart, which the measure tells.
    expect(find('exclusion-cuts-nothing', beside(0))).toEqual([]);
  });
});

it('hands out plain issues, without fixes', () => {
  for (const each of checkBook(book(elm, { ...elm, id: 'copy' }))) {
    expect(Object.keys(each).sort()).toEqual(['code', 'message', 'severity', 'where']);
  }
});

it('checks the ground of 2,000 lawns side by side, each with a parcel, an exclusion, a gate and a card, within a second or so', () => {
  const properties = Array.from({ length: 2000 }, (_, at): Property => {
    const [east, north] = [(at % 50) * 100, Math.floor(at / 50) * 60];
    const geometry = box(east, north, 100, 60);
    return property(
      [zone('lawn', geometry, { statedAreaSqFt: 5600 })],
      [exclusion('house', box(east + 30, north + 20, 20, 20))],
      {
        id: `lawn-${at}`,
        name: `Lawn ${at}`,
        parcel: geometry,
        gates: gateAt(east, north),
      },
    );
  });
  const whole = book(...properties);
  // Time of the processor, so that a busy machine does not count.
  const start = process.cpuUsage();
  expect(checkBook(whole)).toEqual([]);
  const { user, system } = process.cpuUsage(start);
  const seconds = (user + system) / 1e6;
  console.log(`checking 2,000 lawns side by side: ${seconds.toFixed(2)} s`);
  expect(seconds).toBeLessThan(3);
});
