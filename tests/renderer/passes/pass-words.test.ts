import { expect, it } from 'vitest';
import { type PassHead, type PassPicture, passPicture } from '../../../core/passes/index.ts';
import { legName } from '../../../renderer/passes/pass-words.ts';
import { rectangle, ringAt } from '../../core/geometry/shapes.ts';

const HEAD: PassHead = { swathFt: 5, overlapFt: 0.5, trimPasses: 1, turnSec: 4, speedMph: 4, squareCorners: true };

function pictureOf(head: PassHead): PassPicture {
  const ground = { outline: [[ringAt([-83, 40], rectangle(0, 0, 30, 20))]], obstacles: [] };
  const picture = passPicture(ground, head, {}, 0, 'zone');
  if (!picture.ok || picture.value === null) throw new Error('no picture');
  return picture.value;
}

it('stretches are counted by their kind; a trim pass that is broken off at corners stays one', () => {
  const picture = pictureOf(HEAD);
  const names = (kind: string) => picture.legs.flatMap((leg, at) => (leg.kind === kind ? [legName(picture, at)] : []));
  expect(names('corner')).toEqual([1, 2, 3, 4].map((at) => `Run into a corner ${at} of 4`));
  expect(names('trim').length).toBeGreaterThan(3);
  expect(new Set(names('trim'))).toEqual(new Set(['Trim pass 1 of 1']));
  expect(names('swath').at(-1)).toBe(`Swath ${picture.swathCount} of ${picture.swathCount}`);
});
