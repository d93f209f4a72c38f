import { describe, expect, it } from 'vitest';
import type { AreaGeometry, Position } from '../../../core/book/index.ts';
import { beginDraft, cornersAt, type DraftPurpose } from '../../../core/sketch/index.ts';
import { draftFigures } from '../../../renderer/stores/draft-figures.ts';
import { block, blockOutline, feetAt } from '../../core/sketch/feet.ts';

const PURPOSE: DraftPurpose = { kind: 'zone', propertyId: 'p', zoneId: 'z', name: '' };
const ring = (outline: AreaGeometry) => (outline.coordinates as readonly (readonly Position[])[])[0]!;
/** 100 by 100 ft with a hole of 20 by 20. */
const HOLED: AreaGeometry = {
  type: 'Polygon',
  coordinates: [ring(blockOutline(0, 0, 100, 100)), ring(blockOutline(40, 40, 60, 60))],
};

describe('figures of a draft', () => {
  it('of a new outline are its own', () => {
    const draft = beginDraft({ purpose: PURPOSE, tool: 'polygon', corners: block(0, 0, 100, 50), outlineErrorFt: 2 });
    const figures = draftFigures(draft);
    expect(figures.areaSqFt).toBeCloseTo(5000, 0);
    expect(figures.perimeterFt).toBeCloseTo(300, 2);
    expect(figures.likelyErrorSqFt).toBeCloseTo(600, 1);
    expect(figures.lastEdgeFt).toBeCloseTo(100, 2);
  });

  it('of one ring of an outline count the others: 10,000 less 400 ft2, and 480 ft of edge', () => {
    for (const place of [
      { polygon: 0, ring: 0 },
      { polygon: 0, ring: 1 },
    ]) {
      const corners = cornersAt(HOLED, place)!;
      const base = { geometry: HOLED, place };
      const figures = draftFigures(beginDraft({ purpose: PURPOSE, tool: 'polygon', corners, base, outlineErrorFt: 1 }));
      expect(figures.areaSqFt).toBeCloseTo(9600, 0);
      expect(figures.likelyErrorSqFt).toBeCloseTo(480, 1);
      expect(figures.perimeterFt).toBeCloseTo(place.ring === 0 ? 400 : 80, 2);
    }
  });

  it('of a circle show its radius as the last side, and of two corners no area', () => {
    const circle = beginDraft({ purpose: PURPOSE, tool: 'circle', corners: [feetAt(0, 0), feetAt(30, 0)] });
    expect(draftFigures(circle).lastEdgeFt).toBeCloseTo(30, 3);
    expect(draftFigures(circle).areaSqFt).toBeCloseTo(Math.PI * 900, 0);
    const line = beginDraft({ purpose: PURPOSE, tool: 'polygon', corners: block(0, 0, 100, 50).slice(0, 2) });
    expect(draftFigures(line)).toMatchObject({ areaSqFt: null, likelyErrorSqFt: null });
  });
});
