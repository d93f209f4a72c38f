import { describe, expect, it } from 'vitest';
import type { Book, Position } from '../../../core/book/index.ts';
import { emptyBook, PLAIN_ROADS } from '../../../core/book/index.ts';
import { applyAction } from '../../../core/edit/index.ts';
import {
  applyDraft,
  beginDraft,
  type Draft,
  type DraftPurpose,
  type DraftStart,
  finishDraft,
  readDraft,
} from '../../../core/sketch/index.ts';
import { property } from '../measure/lawns.ts';
import { areaSqFt, block, blockOutline, good, refusalOf } from './feet.ts';

const BOOK: Book = { ...emptyBook('b', 'Book'), properties: [property([])] };

const drawn = (start: DraftStart, corners: readonly Position[]): Draft =>
  corners.reduce<Draft>((draft, at) => applyDraft(draft, { kind: 'add', at }), beginDraft(start));

describe('an area to drive round', () => {
  const AVOID: DraftPurpose = { kind: 'avoid', areaId: 'avoid-1', name: 'Market' };
  // A quarter of a town: half a mile by a quarter, many times a lawn.
  const quarter = drawn({ purpose: AVOID, tool: 'polygon' }, block(0, 0, 2640, 1320));

  it('becomes one more of the roads of the book, and is taken back as one step', () => {
    const action = good(finishDraft(quarter, BOOK));
    const { book, inverse, label } = good(applyAction(BOOK, action));
    expect(label).toBe('Drive round Market');
    const [area] = book.roads?.avoid ?? [];
    expect(area).toMatchObject({ id: 'avoid-1', name: 'Market', area: { type: 'Polygon' } });
    expect(areaSqFt(area!.area) / (2640 * 1320)).toBeCloseTo(1, 4);
    expect(book.properties).toEqual(BOOK.properties);
    expect(good(applyAction(book, inverse)).book).toEqual(BOOK);
  });

  it('leaves the other settings and areas as they are, and is named where nobody has', () => {
    const other = { id: 'avoid-9', name: 'Area 1', area: blockOutline(0, 0, 90, 90) };
    const with9: Book = { ...BOOK, roads: { ...PLAIN_ROADS, kerbSide: true, avoid: [other] } };
    const unnamed = { ...quarter, purpose: { ...AVOID, name: '' } };
    const { book } = good(applyAction(with9, good(finishDraft(unnamed, with9))));
    expect(book.roads?.kerbSide).toBe(true);
    expect(book.roads?.avoid.map(({ id, name }) => [id, name])).toEqual([
      ['avoid-9', 'Area 1'],
      ['avoid-1', 'Area 2'],
    ]);
  });

  it('is refused where it crosses itself, has too few corners, is more than 10 km across, or is in the book already', () => {
    const [a, b, c, d] = block(0, 0, 900, 900) as [Position, Position, Position, Position];
    const crossed = drawn({ purpose: AVOID, tool: 'polygon' }, [a, c, b, d]);
    expect(refusalOf(finishDraft(crossed, BOOK)).code).toBe('geometry-invalid');
    const two = drawn({ purpose: AVOID, tool: 'polygon' }, [a, b]);
    expect(refusalOf(finishDraft(two, BOOK)).detail).toBe('There are 2 corners so far.');
    const county = drawn({ purpose: AVOID, tool: 'polygon' }, block(0, 0, 40_000, 40_000));
    expect(refusalOf(finishDraft(county, BOOK)).detail).toContain('10 km');
    const { book } = good(applyAction(BOOK, good(finishDraft(quarter, BOOK))));
    expect(refusalOf(finishDraft(quarter, book)).detail).toContain('already');
  });

  it('is read again as it was stored', () => {
    expect(good(readDraft(JSON.parse(JSON.stringify(quarter))))).toEqual(quarter);
  });
});
