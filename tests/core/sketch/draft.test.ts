import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Book, Position, Property, Zone } from '../../../core/book/index.ts';
import { emptyBook } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import {
  applyDraft,
  beginDraft,
  cornersAt,
  cornersWanted,
  type Draft,
  type DraftPurpose,
  type DraftStart,
  type DraftStep,
  draftOutline,
  draftPlace,
  endDraftMerging,
  FIRST_SHELL,
  finishDraft,
  polygonOf,
  propertyIdOf,
  readDraft,
  redoDraft,
  undoDraft,
} from '../../../core/sketch/index.ts';
import { areaSqFt, block, blockOutline, cornersInFeet, feetAt, good, HOME, refusalOf } from './feet.ts';

const ZONE: DraftPurpose = { kind: 'zone', propertyId: 'p-1', zoneId: 'z-new', name: 'Back' };

const PROPERTY: Property = {
  id: 'p-1',
  name: 'Oak 7',
  address: '',
  parking: HOME,
  noTrailer: false,
  gates: [],
  zones: [
    {
      id: 'z-1',
      name: 'Front',
      shape: { kind: 'drawn', geometry: blockOutline(0, 0, 100, 100), outlineErrorFt: 1, drawnOver: 'aerial picture' },
      slopeDeg: 4,
      gateIds: [],
      statedAreaSqFt: 9900,
      hosePathFt: 80,
      hoseStand: HOME,
    },
    { id: 'z-2', name: 'Card', shape: { kind: 'stated', areaSqFt: 800, method: '' }, slopeDeg: 0, gateIds: [] },
  ],
  exclusions: [],
  cautions: [],
  note: '',
};
const BOOK: Book = { ...emptyBook('b', 'Book'), properties: [PROPERTY] };

const drawn = (start: DraftStart, corners = block(0, 0, 50, 50)): Draft =>
  corners.reduce<Draft>((draft, at) => applyDraft(draft, { kind: 'add', at }), beginDraft(start));

/** The property after a draft was finished and its action applied, through the schema of the book. */
function finished(draft: Draft, book = BOOK): Property {
  const { book: after } = good(applyAction(book, good(finishDraft(draft, book))));
  return after.properties.find((each) => each.id === propertyIdOf(draft.purpose))!;
}
const areaOf = (property: Property, zoneId: string): number => {
  const { shape } = property.zones.find((each) => each.id === zoneId)!;
  return shape.kind === 'drawn' ? areaSqFt(shape.geometry) : shape.areaSqFt;
};

describe('steps of a draft', () => {
  const draft = drawn({ purpose: ZONE, tool: 'polygon' });

  it('are taken back and done again one by one', () => {
    const back = undoDraft(undoDraft(draft));
    expect(back.corners).toEqual(block(0, 0, 50, 50).slice(0, 2));
    expect(redoDraft(redoDraft(back)).corners).toEqual(draft.corners);
    expect(redoDraft(draft)).toBe(draft);
    const empty = beginDraft({ purpose: ZONE, tool: 'polygon' });
    expect(undoDraft(empty)).toBe(empty);
  });

  it('a new step forgets what was taken back', () => {
    const other = applyDraft(undoDraft(draft), { kind: 'move', index: 0, to: feetAt(-5, 0) });
    expect(other.redo).toEqual([]);
    expect(undoDraft(other).corners).toEqual(block(0, 0, 50, 50).slice(0, 3));
  });

  it('of one drag are one step; the end of the drag ends it', () => {
    const drag = (from: Draft, east: number) =>
      applyDraft(from, { kind: 'move', index: 1, to: feetAt(east, 0), mergeKey: 'drag-1' });
    const dragged = drag(drag(drag(draft, 60), 70), 80);
    expect(dragged.corners[1]).toEqual(feetAt(80, 0));
    expect(undoDraft(dragged).corners).toEqual(draft.corners);
    expect(redoDraft(undoDraft(dragged)).corners).toEqual(dragged.corners);
    const again = drag(endDraftMerging(dragged), 90);
    expect(undoDraft(again).corners).toEqual(dragged.corners);
    expect(endDraftMerging(draft)).toBe(draft);
  });

  it('of one key are one step, whatever they do', () => {
    const keyed = (from: Draft, step: DraftStep) => applyDraft(from, { ...step, mergeKey: 'nudge' });
    const replaced = keyed(draft, { kind: 'replace', corners: block(1, 0, 51, 50) });
    const twice = keyed(replaced, { kind: 'replace', corners: block(2, 0, 52, 50) });
    const mixed = keyed(twice, { kind: 'move', index: 0, to: HOME });
    expect(undoDraft(mixed)).toMatchObject({ corners: draft.corners, undo: draft.undo });
    const inserted = keyed(keyed(draft, { kind: 'add', at: HOME, index: 1 }), {
      kind: 'move',
      index: 1,
      to: feetAt(9, 9),
    });
    expect(undoDraft(inserted)).toMatchObject({ corners: draft.corners, undo: draft.undo });
    expect(redoDraft(undoDraft(inserted)).corners).toEqual(inserted.corners);
  });

  it('that have no place in it change nothing', () => {
    expect(applyDraft(draft, { kind: 'remove', index: 4 })).toBe(draft);
    expect(applyDraft(draft, { kind: 'move', index: 9, to: HOME })).toBe(draft);
    expect(applyDraft(draft, { kind: 'add', at: HOME, index: 5 })).toBe(draft);
    expect(applyDraft(draft, { kind: 'add', at: [Number.NaN, 0] })).toBe(draft);
    expect(applyDraft(draft, { kind: 'replace', corners: [[500, 0]] })).toBe(draft);
  });

  it('survive being written as JSON and read again', () => {
    const busy = undoDraft(applyDraft(draft, { kind: 'remove', index: 2 }));
    const withBase: Draft = { ...busy, base: { geometry: blockOutline(0, 0, 9, 9), place: FIRST_SHELL } };
    for (const each of [busy, withBase]) {
      expect(good(readDraft(JSON.parse(JSON.stringify(each))))).toEqual(each);
    }
  });

  it('that are no draft are refused with the place', () => {
    expect(refusalOf(readDraft({ ...draft, tool: 'spiral' })).code).toBe('format-invalid');
    expect(refusalOf(readDraft(null)).code).toBe('format-invalid');
    const result = readDraft({ ...draft, corners: [['a', 1]] });
    expect(!result.ok && result.error.where).toBe('corners.0.0');
  });
});

describe('tools', () => {
  it('a rectangle is two corners and a point on its far side', () => {
    const draft = drawn({ purpose: ZONE, tool: 'rectangle' }, [HOME, feetAt(60, 0), feetAt(20, 30)]);
    expect(areaSqFt(polygonOf(draftOutline(draft)))).toBeCloseTo(1800, 0);
    expect(draftOutline(undoDraft(draft))).toHaveLength(2);
    expect(cornersWanted(undoDraft(draft))).toBe(1);
  });

  it('a circle is a centre and a point on its rim', () => {
    const draft = drawn({ purpose: ZONE, tool: 'circle' }, [HOME, feetAt(20, 0)]);
    expect(cornersWanted(draft)).toBe(0);
    expect(areaOf(finished(draft), 'z-new')).toBeCloseTo(Math.PI * 400, 0);
  });

  it('a walk is closed, its gap spread', () => {
    const draft = drawn({ purpose: ZONE, tool: 'walk' }, [...block(0, 0, 100, 100), feetAt(0, 2)]);
    expect(draftOutline(draft)).toHaveLength(4);
    const open = drawn({ purpose: ZONE, tool: 'walk' }, block(0, 0, 100, 100));
    expect(draftOutline(open)).toEqual(open.corners);
  });
});

describe('finishing', () => {
  it('adds a zone with what it was drawn over', () => {
    const draft = drawn({ purpose: ZONE, tool: 'polygon', drawnOver: 'plan', outlineErrorFt: 2 });
    const action = good(finishDraft(draft, BOOK));
    expect(action).toMatchObject({ kind: 'put', table: 'properties', label: 'Draw zone Back of Oak 7' });
    const zone = finished(draft).zones[2]!;
    expect(zone).toMatchObject({ id: 'z-new', name: 'Back', shape: { drawnOver: 'plan', outlineErrorFt: 2 } });
    expect(areaOf(finished(draft), 'z-new')).toBeCloseTo(2500, 0);
  });

  it('begins a property with its first outline where that is asked for, and only then', () => {
    const purpose: DraftPurpose = { ...ZONE, propertyId: 'p-2', name: '' };
    const property = finished(drawn({ purpose, tool: 'polygon', newPropertyName: 'Elm 3' }));
    expect(property).toMatchObject({ name: 'Elm 3', parking: block(0, 0, 50, 50)[0], zones: [{ name: 'Zone 1' }] });
    expect(refusalOf(finishDraft(drawn({ purpose, tool: 'polygon' }), BOOK)).code).toBe('reference-missing');
  });

  it('replaces one ring of an outline that was there and keeps the rest of the zone', () => {
    const base = { geometry: blockOutline(0, 0, 100, 100), place: FIRST_SHELL };
    const purpose: DraftPurpose = { kind: 'zone', propertyId: 'p-1', zoneId: 'z-1', name: '' };
    const start = beginDraft({ purpose, tool: 'polygon', base, corners: cornersAt(base.geometry, FIRST_SHELL)! });
    const property = finished(applyDraft(start, { kind: 'move', index: 0, to: feetAt(0, 50) }));
    expect(areaOf(property, 'z-1')).toBeCloseTo(7500, 0);
    expect(property.zones[0]).toMatchObject({ name: 'Front', slopeDeg: 4, shape: { outlineErrorFt: 1 } });
  });

  it('of one ring leaves what happened to the others meanwhile, and refuses where its own was changed', () => {
    const base = { geometry: blockOutline(0, 0, 100, 100), place: FIRST_SHELL };
    const purpose: DraftPurpose = { kind: 'zone', propertyId: 'p-1', zoneId: 'z-1', name: '' };
    const start = beginDraft({ purpose, tool: 'polygon', base, corners: cornersAt(base.geometry, FIRST_SHELL)! });
    const draft = applyDraft(start, { kind: 'move', index: 0, to: feetAt(0, 50) });
    const withShape = (geometry: AreaGeometry): Book => {
      const zone: Zone = { ...PROPERTY.zones[0]!, shape: { kind: 'drawn', geometry } };
      return { ...BOOK, properties: [{ ...PROPERTY, zones: [zone] }] };
    };
    const [shell] = base.geometry.coordinates as readonly (readonly Position[])[];
    const hole = [...block(70, 70, 80, 80), block(70, 70, 80, 80)[0]!];
    const holed: AreaGeometry = { type: 'Polygon', coordinates: [shell!, hole] };
    expect(areaOf(finished(draft, withShape(holed)), 'z-1')).toBeCloseTo(7400, 0);
    expect(refusalOf(finishDraft(draft, withShape(blockOutline(0, 0, 100, 99)))).code).toBe('book-changed');
    // where the zone is gone, what was drawn is not
    const { shape } = finished(draft, { ...BOOK, properties: [{ ...PROPERTY, zones: [] }] }).zones[0]!;
    expect(shape.kind).toBe('drawn');
  });

  it('keeps the area of a card beside the outline that takes its place', () => {
    const purpose: DraftPurpose = { kind: 'zone', propertyId: 'p-1', zoneId: 'z-2', name: '' };
    expect(finished(drawn({ purpose, tool: 'polygon' })).zones[1]).toMatchObject({
      name: 'Card',
      statedAreaSqFt: 800,
      shape: { kind: 'drawn' },
    });
  });

  it('adds and changes exclusions, gates, parking points and hose stands', () => {
    const exclusion: DraftPurpose = {
      kind: 'exclusion',
      propertyId: 'p-1',
      exclusionId: 'e-1',
      name: 'House',
      what: 'building',
    };
    const gate: DraftPurpose = { kind: 'gate', propertyId: 'p-1', gateId: 'g-1', name: '', clearWidthIn: 48 };
    const excluded = finished(drawn({ purpose: exclusion, tool: 'polygon' }));
    expect(excluded.exclusions).toMatchObject([{ id: 'e-1', what: 'building', keepAwayFt: 0 }]);
    const at = feetAt(5, 5);
    const gated = finished(drawn({ purpose: gate, tool: 'polygon' }, [HOME, at]));
    expect(gated.gates).toEqual([{ id: 'g-1', name: 'Gate 1', clearWidthIn: 48, at, locked: false }]);
    const book = { ...BOOK, properties: [{ ...gated, exclusions: excluded.exclusions }] };
    expect(
      finished(drawn({ purpose: { ...gate, clearWidthIn: 36 }, tool: 'polygon' }, [HOME]), book).gates,
    ).toMatchObject([{ name: 'Gate 1', clearWidthIn: 36, at: HOME }]);
    const paved: DraftPurpose = { ...exclusion, name: '', what: 'paving' };
    expect(finished(drawn({ purpose: paved, tool: 'polygon' }), book).exclusions).toMatchObject([
      { name: 'House', what: 'paving' },
    ]);
    const parked = finished(drawn({ purpose: { kind: 'parking', propertyId: 'p-1' }, tool: 'polygon' }, [at]));
    expect(parked).toMatchObject({ parking: at, placedBy: 'hand' });
    const stand: DraftPurpose = { kind: 'hose-stand', propertyId: 'p-1', zoneId: 'z-1' };
    const draft = drawn({ purpose: stand, tool: 'polygon' }, [at]);
    expect(finished(draft).zones[0]!.hoseStand).toEqual(at);
    expect(draftPlace(draft)).toEqual(at);
  });

  it('cuts holes and pieces out of the zone', () => {
    const on = (kind: 'hole' | 'cut', zoneId = 'z-1'): DraftPurpose => ({ kind, propertyId: 'p-1', zoneId });
    const inside = block(10, 10, 30, 30);
    expect(areaOf(finished(drawn({ purpose: on('hole'), tool: 'polygon' }, inside)), 'z-1')).toBeCloseTo(9600, 0);
    const across = block(90, 0, 200, 100);
    expect(areaOf(finished(drawn({ purpose: on('cut'), tool: 'polygon' }, across)), 'z-1')).toBeCloseTo(9000, 0);
    expect(refusalOf(finishDraft(drawn({ purpose: on('hole'), tool: 'polygon' }, across), BOOK)).detail).toContain(
      'reaches outside',
    );
    expect(refusalOf(finishDraft(drawn({ purpose: on('cut', 'z-2'), tool: 'polygon' }), BOOK)).detail).toContain(
      'stated area',
    );
    expect(refusalOf(finishDraft(drawn({ purpose: on('cut', 'z-9'), tool: 'polygon' }), BOOK)).code).toBe(
      'reference-missing',
    );
  });

  it('splits a zone in two; figures of the whole go', () => {
    const purpose: DraftPurpose = { kind: 'split-line', propertyId: 'p-1', zoneId: 'z-1' };
    const [first, second, card] = finished(
      drawn({ purpose, tool: 'polygon' }, [feetAt(40, -5), feetAt(40, 105)]),
    ).zones;
    expect(first).toMatchObject({ id: 'z-1', name: 'Front', slopeDeg: 4, hoseStand: HOME });
    expect(second).toMatchObject({ id: 'z-1-2', name: 'Front 2', slopeDeg: 4, shape: { outlineErrorFt: 1 } });
    expect(card!.id).toBe('z-2');
    for (const member of ['statedAreaSqFt', 'hosePathFt']) {
      expect(first).not.toHaveProperty(member);
      expect(second).not.toHaveProperty(member);
    }
    expect(second).not.toHaveProperty('hoseStand');
  });

  it('gives pieces ids that are free', () => {
    const taken = { ...PROPERTY, zones: [...PROPERTY.zones, { ...PROPERTY.zones[1]!, id: 'z-1-2' }] };
    const purpose: DraftPurpose = { kind: 'split-line', propertyId: 'p-1', zoneId: 'z-1' };
    const draft = drawn({ purpose, tool: 'polygon' }, [feetAt(40, -5), feetAt(40, 105)]);
    expect(finished(draft, { ...BOOK, properties: [taken] }).zones.map((each) => each.id)).toEqual([
      'z-1',
      'z-1-3',
      'z-2',
      'z-1-2',
    ]);
  });

  it('refuses an outline that crosses itself, with the place', () => {
    const bowTie = cornersInFeet([
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ]);
    const { code, detail } = refusalOf(finishDraft(drawn({ purpose: ZONE, tool: 'polygon' }, bowTie), BOOK));
    expect(code).toBe('geometry-invalid');
    const [longitude, latitude] = feetAt(50, 50);
    expect(detail).toContain(`longitude ${longitude.toFixed(6)}, latitude ${latitude.toFixed(6)}`);
  });

  it('refuses too few corners and no width', () => {
    const two = drawn({ purpose: ZONE, tool: 'polygon' }, block(0, 0, 9, 9).slice(0, 2));
    expect(refusalOf(finishDraft(two, BOOK)).detail).toBe('There are 2 corners so far.');
    const flat = drawn({ purpose: ZONE, tool: 'polygon' }, [HOME, feetAt(50, 0), HOME, feetAt(50, 0)]);
    expect(refusalOf(finishDraft(flat, BOOK)).code).toBe('geometry-invalid');
    const gate: DraftPurpose = { kind: 'gate', propertyId: 'p-1', gateId: 'g', name: '', clearWidthIn: 40 };
    expect(refusalOf(finishDraft(beginDraft({ purpose: gate, tool: 'polygon' }), BOOK)).code).toBe('geometry-invalid');
  });
});
