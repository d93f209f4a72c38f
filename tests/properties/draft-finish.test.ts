import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AreaGeometry, type Book, emptyBook, type Position, readBook, writeBook } from '../../core/book/index.ts';
import { applyAction } from '../../core/edit/index.ts';
import { measureProperty } from '../../core/measure/index.ts';
import {
  applyDraft,
  beginDraft,
  type Draft,
  draftOutline,
  finishDraft,
  propertyIdOf,
  readDraft,
} from '../../core/sketch/index.ts';
import { property, stated, zone } from '../core/measure/lawns.ts';
import { blockOutline } from '../core/sketch/feet.ts';

const LONG = 'n'.repeat(200);
const HOLED: AreaGeometry = {
  type: 'Polygon',
  coordinates: [
    ...(blockOutline(0, 0, 100, 100).coordinates as readonly (readonly Position[])[]),
    ...(blockOutline(40, 40, 60, 60).coordinates as readonly (readonly Position[])[]),
  ],
};
const BOOK: Book = {
  ...emptyBook('b', 'Book'),
  properties: [
    property([
      zone('z1', HOLED),
      stated('card', 700),
      { ...zone('i'.repeat(120), blockOutline(120, 0, 220, 100)), name: LONG },
    ]),
  ],
};

/** Places on and round the lawn, many of them on its corners and sides. */
const feet = fc.oneof(fc.constantFrom(0, 40, 50, 60, 100, 120, 220), fc.integer({ min: -30, max: 250 }));
const placeOf = ([x, y]: readonly [number, number]): Position => [-83 + x * 3.569e-6, 40 + y * 2.745e-6];
const place = fc.tuple(feet, feet).map(placeOf);
/** Blocks as well, since most random corners cross themselves. */
const inside = fc.tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 99 })).map(placeOf);
const blocks = fc
  .oneof(fc.tuple(place, place), fc.tuple(inside, inside))
  .map(([[west, south], [east, north]]): readonly Position[] => [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ]);
const zoneId = fc.constantFrom('z1', 'z1', 'z1', 'z1', 'card', 'i'.repeat(120), 'gone', 'new');
const propertyId = fc.constantFrom('p1', 'p1', 'p1', 'p1', 'p1', 'elsewhere');
const name = fc.constantFrom('', 'Back', LONG);
type Kind = Draft['purpose']['kind'];
const onZone = <Which extends Kind>(kind: Which) => fc.record({ kind: fc.constant(kind), propertyId, zoneId });
const purposes: Readonly<Record<Kind, fc.Arbitrary<unknown>>> = {
  zone: fc.record({ kind: fc.constant('zone'), propertyId, zoneId, name }),
  exclusion: fc.record({
    kind: fc.constant('exclusion'),
    propertyId,
    exclusionId: fc.constantFrom('e1', 'e2'),
    name,
    what: fc.constantFrom('building', 'bed'),
  }),
  gate: fc.record({
    kind: fc.constant('gate'),
    propertyId,
    gateId: fc.constantFrom('g1', 'g2'),
    name,
    clearWidthIn: fc.double({ min: 1e-300, max: 1e300, noNaN: true }),
  }),
  parking: fc.record({ kind: fc.constant('parking'), propertyId }),
  'hose-stand': onZone('hose-stand'),
  hole: onZone('hole'),
  cut: onZone('cut'),
  'split-line': onZone('split-line'),
  avoid: fc.record({ kind: fc.constant('avoid'), areaId: fc.constantFrom('a1', 'a2'), name }),
};
const ringPlace = fc.record({ polygon: fc.nat(2), ring: fc.nat(2) });
const draftsOf = (kind: Kind): fc.Arbitrary<Draft> =>
  fc
    .record({
      purpose: purposes[kind],
      tool: fc.constantFrom(
        'polygon' as const,
        'polygon' as const,
        'rectangle' as const,
        'circle' as const,
        'walk' as const,
      ),
      corners: fc.oneof(fc.array(place, { maxLength: 8 }), { weight: 3, arbitrary: blocks }),
      base: fc.option(fc.record({ geometry: fc.constantFrom(HOLED, blockOutline(0, 0, 9, 9)), place: ringPlace }), {
        nil: undefined,
        freq: 3,
      }),
      newPropertyName: fc.option(name, { nil: undefined }),
      outlineErrorFt: fc.option(fc.double({ min: 0, max: 1e9, noNaN: true }), { nil: undefined }),
    })
    .map((draft) => beginDraft(JSON.parse(JSON.stringify(draft)) as Draft));

describe('finishing any draft', () => {
  it.each(Object.keys(purposes) as Kind[])(
    'of kind %s refuses with a reason, or gives an edit that the book takes and the measure can use',
    (kind) => {
      let finished = 0;
      fc.assert(
        fc.property(draftsOf(kind), (draft) => {
          draftOutline(draft);
          const action = finishDraft(draft, BOOK);
          if (!action.ok) {
            expect(action.error.detail).not.toBe('');
            expect(action.error.hint).not.toBe('');
            return;
          }
          finished += 1;
          const applied = applyAction(BOOK, action.value);
          if (!applied.ok) throw new Error(JSON.stringify(applied.error));
          const back = applyAction(applied.value.book, applied.value.inverse);
          expect(back.ok && back.value.book).toEqual(BOOK);
          const propertyId = propertyIdOf(draft.purpose);
          if (propertyId === null) {
            expect(readBook(writeBook(applied.value.book), 'book').ok).toBe(true);
            return;
          }
          const after = applied.value.book.properties.find((each) => each.id === propertyId);
          const measure = measureProperty(after!);
          const isError = (code: string) =>
            measure.issues.some((each) => each.severity === 'error' && each.code === code);
          expect(isError('geometry-self-crossing')).toBe(false);
        }),
        { numRuns: 150 },
      );
      expect(finished).toBeGreaterThan(0);
    },
  );
});

describe('reading a stored draft', () => {
  const draft = applyDraft(beginDraft({ purpose: { kind: 'parking', propertyId: 'p' }, tool: 'polygon' }), {
    kind: 'add',
    at: [-83, 40],
  });

  it('never throws, whatever is stored', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(readDraft(value).ok).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  it('refuses a draft with a member broken, or reads it whole', () => {
    const members = Object.keys(draft) as readonly (keyof Draft)[];
    fc.assert(
      fc.property(fc.constantFrom(...members), fc.jsonValue(), (member, value) => {
        const read = readDraft({ ...draft, [member]: value });
        if (!read.ok) expect(read.error.where.startsWith(member)).toBe(true);
        else expect(JSON.stringify(read.value[member])).toBe(JSON.stringify(value));
      }),
      { numRuns: 300 },
    );
  });
});
