import { describe, expect, it } from 'vitest';
import { bandAreaSqFt } from '../../../core/measure/index.ts';
import { rectangle } from '../geometry/shapes.ts';
import { exclusion, polygonFt, property, stated, zone } from './lawns.ts';

describe('bandAreaSqFt', () => {
  const drawn = zone('lawn', polygonFt(rectangle(0, 0, 200, 100)));
  const drive = exclusion('drive', polygonFt(rectangle(-20, -50, 0, 150)), { what: 'paving' });
  const bed = exclusion('bed', polygonFt(rectangle(190, 0, 200, 100)), { what: 'bed' });
  const house = exclusion('house', polygonFt(rectangle(50, 50, 70, 70)), { what: 'building' });

  it('is the strip along a drive beside the turf: 100 ft x 3 ft', () => {
    const lawn = property([drawn], [drive, bed, house]);
    expect(bandAreaSqFt(lawn, drawn, 3, ['paving'])).toBeCloseTo(300, 1);
    expect(bandAreaSqFt(lawn, drawn, 2, ['bed'])).toBeCloseTo(200, 1);
    expect(bandAreaSqFt(lawn, drawn, 2, ['bed', 'paving'])).toBeCloseTo(400, 1);
  });

  it('starts at the edge of the keep-away strip', () => {
    const lawn = property([drawn], [{ ...drive, keepAwayFt: 2 }]);
    expect(bandAreaSqFt(lawn, drawn, 3, ['paving'])).toBeCloseTo(300, 1);
  });

  it('rounds outer corners of a walk in the turf', () => {
    // A walk 10 x 20 inside: 2 x 3 x 30 + pi x 9.
    const lawn = property([drawn], [exclusion('walk', polygonFt(rectangle(80, 40, 90, 60)), { what: 'paving' })]);
    expect(bandAreaSqFt(lawn, drawn, 3, ['paving'])).toBeCloseTo(180 + Math.PI * 9, 1);
  });

  it('counts no ground twice where strips meet, and no more than the zone', () => {
    const second = exclusion('walk', polygonFt(rectangle(0, -20, 200, 0)), { what: 'paving' });
    const lawn = property([drawn], [drive, second]);
    expect(bandAreaSqFt(lawn, drawn, 10, ['paving'])).toBeCloseTo(1000 + 2000 - 100, 0);
    expect(bandAreaSqFt(lawn, drawn, 900, ['paving'])).toBeCloseTo(20_000, 0);
  });

  it('lies on the slope of the zone', () => {
    const bank = zone('bank', polygonFt(rectangle(0, 0, 200, 100)), { slopeDeg: 60 });
    expect(bandAreaSqFt(property([bank], [drive]), bank, 3, ['paving'])).toBeCloseTo(600, 0);
  });

  it('takes the edge lengths written down for stated areas, and where nothing is drawn', () => {
    const card = stated('card', 5000, { pavementEdgeFt: 120, bedEdgeFt: 60 });
    const lawn = property([card]);
    expect(bandAreaSqFt(lawn, card, 2, ['paving'])).toBe(240);
    expect(bandAreaSqFt(lawn, card, 2, ['paving', 'bed'])).toBe(360);
    expect(bandAreaSqFt(lawn, card, 100, ['paving', 'bed'])).toBe(5000);
    const edged = { ...drawn, pavementEdgeFt: 100 };
    expect(bandAreaSqFt(property([edged]), edged, 3, ['paving'])).toBe(300);
  });

  it('is nothing where there is no edge or no zone', () => {
    expect(bandAreaSqFt(property([drawn], [house]), drawn, 3, ['paving'])).toBe(0);
    expect(bandAreaSqFt(property([]), drawn, 3, ['paving'])).toBe(0);
  });
});
