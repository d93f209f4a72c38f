import { describe, expect, it } from 'vitest';
import { standsFor } from '../../../core/measure/index.ts';
import { rectangle } from '../geometry/shapes.ts';
import { exclusion, polygonFt, property, stated, zone } from './lawns.ts';

describe('standsFor', () => {
  // The back lies from 100 to 160 ft east, 0 to 80 ft north; the front from 0 to 80 ft east beside it.
  const front = zone('front', polygonFt(rectangle(0, 0, 80, 80)));
  const back = zone('back', polygonFt(rectangle(100, 0, 160, 80)));
  const feet = (lawn: ReturnType<typeof property>, served: typeof back) =>
    standsFor(lawn, served).map((each) => [each.zone.id, Math.round(each.farthestFt * 10) / 10]);

  it('are the corners of zones from which the farthest corner is nearest', () => {
    // From (80, 0) to (160, 80), and from any corner of the back to the one across.
    expect(feet(property([front, back]), back)).toEqual([
      ['front', Math.round(Math.hypot(80, 80) * 10) / 10],
      ['back', 100],
    ]);
  });

  it('count to what is treated only', () => {
    const pond = exclusion('pond', polygonFt(rectangle(120, 0, 160, 80)), { what: 'water' });
    expect(feet(property([front, back], [pond]), back)[0]).toEqual(['front', Math.round(Math.hypot(40, 80) * 10) / 10]);
  });

  it('are none where the hose was paced, and none to or from a zone without an outline', () => {
    const paced = { ...back, hosePathFt: 140 };
    expect(standsFor(property([front, paced]), paced)).toEqual([]);
    const card = stated('card', 5000);
    expect(standsFor(property([front, card]), card)).toEqual([]);
    expect(feet(property([card, back]), back)).toEqual([['back', 100]]);
  });
});
