import type { Random } from '../../../core/base/index.ts';
import type { Tags, Town } from './town.ts';

/**
 * An invented town: a jittered grid with pieces missing, streets of one to three blocks, some one-way, private, with signals,
 * barriers, limits and turn restrictions.
 */
export function randomTown(random: Random, side: number, isPlain = false): Town {
  const nodes: Record<string, [number, number, Tags?]> = {};
  const name = (x: number, y: number): string => `n${x}_${y}`;
  for (let x = 0; x < side; x += 1) {
    for (let y = 0; y < side; y += 1) {
      nodes[name(x, y)] = [100 * x + random.below(40), 100 * y + random.below(40), nodeTags(random, isPlain)];
    }
  }
  const ways: [string, Tags][] = [];
  for (let line = 0; line < side; line += 1) {
    for (const isRow of [true, false]) {
      for (let at = 0; at + 1 < side; ) {
        const length = Math.min(1 + random.below(3), side - 1 - at);
        const names = Array.from({ length: length + 1 }, (_, step) =>
          isRow ? name(at + step, line) : name(line, at + step),
        );
        if (random.below(8) > 0) ways.push([names.join(' '), wayTags(random, isPlain)]);
        at += length;
      }
    }
  }
  const restrictions = isPlain ? [] : randomRestrictions(random, ways);
  return { nodes, ways, restrictions };
}

function nodeTags(random: Random, isPlain: boolean): Tags {
  const dice = isPlain ? 99 : random.below(40);
  if (dice === 0) return { barrier: 'bollard' };
  if (dice === 1) return { barrier: 'gate' };
  if (dice === 2) return { barrier: 'gate', access: 'private' };
  return dice < 8 ? { highway: 'traffic_signals' } : {};
}

function wayTags(random: Random, isPlain: boolean): Tags {
  const highway = (['residential', 'primary', 'tertiary', 'service'] as const)[random.below(4)]!;
  if (isPlain) return { highway };
  const oneway = (['yes', '-1', 'no', 'no', 'no'] as const)[random.below(5)]!;
  return random.below(10) === 0 ? { highway, oneway, access: 'private' } : { highway, oneway };
}

function randomRestrictions(random: Random, ways: readonly (readonly [string, Tags])[]): Town['restrictions'] {
  const ends = ways.map(([names]) => {
    const list = names.split(' ');
    return [list[0]!, list[list.length - 1]!] as const;
  });
  const found: { kind: string; from: number; via: string; to: number }[] = [];
  for (const _ of ways) {
    const from = random.below(ways.length);
    const via = ends[from]![random.below(2)]!;
    const others = ways.flatMap((_, way) => (way !== from && ends[way]!.includes(via) ? [way] : []));
    if (others.length === 0 || random.below(3) > 0) continue;
    const kind = random.below(4) === 0 ? 'only_straight_on' : 'no_left_turn';
    found.push({ kind, from, via, to: others[random.below(others.length)]! });
  }
  return found;
}
