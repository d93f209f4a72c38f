export type Spot = readonly [x: number, y: number];
/** Width and height of a picture that begins at 0, 0. */
export type Frame = { readonly width: number; readonly height: number };

const GAP = 2;
const MOST_ROUNDS = 2000;
/** Labels on one and the same spot part in directions that never repeat. */
const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

/**
 * Moves round labels apart until none covers another, each as little as its neighbours allow, and keeps them inside the frame.
 * The same spots always give the same answer, in the same order. Where the frame is too small for all, some still overlap.
 * @param spots middles of the labels
 * @param radius of every label, in the unit of the spots
 */
export function spreadLabels(spots: readonly Spot[], radius: number, frame: Frame): readonly Spot[] {
  const moved = spots.map((spot) => inside(spot, radius, frame));
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    if (!pushApart(moved, radius, frame)) break;
  }
  return moved;
}

/** One round over all pairs; false where nothing had to move. */
function pushApart(spots: Spot[], radius: number, frame: Frame): boolean {
  let pushed = false;
  for (let first = 0; first < spots.length; first += 1) {
    for (let second = first + 1; second < spots.length; second += 1) {
      if (pushPair(spots, first, second, radius, frame)) pushed = true;
    }
  }
  return pushed;
}

function pushPair(spots: Spot[], first: number, second: number, radius: number, frame: Frame): boolean {
  const [one, other] = [spots[first], spots[second]];
  if (one === undefined || other === undefined) return false;
  const [dx, dy] = [other[0] - one[0], other[1] - one[1]];
  const apart = Math.hypot(dx, dy);
  if (apart >= 2 * radius + GAP) return false;
  const angle = apart < 1e-6 ? second * GOLDEN_ANGLE : Math.atan2(dy, dx);
  // A little further than half the way each, so that the rounds come to an end.
  const push = (2 * radius + GAP - apart) / 2 + 0.05;
  const [x, y] = [Math.cos(angle) * push, Math.sin(angle) * push];
  spots[first] = inside([one[0] - x, one[1] - y], radius, frame);
  spots[second] = inside([other[0] + x, other[1] + y], radius, frame);
  return true;
}

function inside([x, y]: Spot, radius: number, { width, height }: Frame): Spot {
  const edge = radius + 1;
  return [Math.min(Math.max(x, edge), width - edge), Math.min(Math.max(y, edge), height - edge)];
}
