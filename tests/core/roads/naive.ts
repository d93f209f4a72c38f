import type { Town } from './town.ts';

/**
 * A second router, written from docs/methods/roads.md alone and from the town itself, not from the map: nodes one by one, every
 * piece between two neighbouring nodes a state of its own, and least times by going over all pieces until nothing changes. It
 * knows what `randomTown` makes, speeds of 10 m/s, and seconds for signals and gates.
 */
export type NaiveRouter = {
  readonly pieces: readonly Piece[];
  /**
   * Entries to private ground and seconds from the middle of one piece, in its direction, to the middles of all others; null for
   * those that cannot be reached.
   */
  readonly leastFrom: (from: number) => readonly (readonly [entries: number, seconds: number] | null)[];
};

export type Piece = { readonly from: string; readonly to: string; readonly way: number; readonly metres: number };
export type Waits = { readonly signalSec: number; readonly gateSec: number; readonly roundSec: number };

export function naiveRouter(town: Town, waits: Waits): NaiveRouter {
  const pieces: Piece[] = [];
  town.ways.forEach(([names, tags = {}], way) => {
    const list = names.split(' ');
    for (let at = 1; at < list.length; at += 1) {
      const [one, other] = [list[at - 1]!, list[at]!];
      const [a, b] = [town.nodes[one]!, town.nodes[other]!];
      const metres = Math.hypot(a[0] - b[0], a[1] - b[1]);
      if (tags.oneway !== '-1') pieces.push({ from: one, to: other, way, metres });
      if (tags.oneway !== 'yes') pieces.push({ from: other, to: one, way, metres });
    }
  });
  const follows = pieces.map((piece) => followers(town, pieces, piece));
  const leastFrom: NaiveRouter['leastFrom'] = (from) => {
    const best: (readonly [number, number] | null)[] = pieces.map(() => null);
    best[from] = [0, 0];
    const queue = [from];
    for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
      const [entries, seconds] = best[at]!;
      for (const next of follows[at]!) {
        const [one, other] = [pieces[at]!, pieces[next]!];
        const isBack = other.to === one.from;
        const cost =
          seconds + one.metres / 20 + other.metres / 20 + (isBack ? waits.roundSec : waitAt(town, one.to, waits));
        const more = entries + (isBack ? 0 : entered(town, one, other));
        const known = best[next];
        if (known && (more > known[0] || (more === known[0] && cost >= known[1] - 1e-9))) continue;
        best[next] = [more, cost];
        queue.push(next);
      }
    }
    return best;
  };
  return { pieces, leastFrom };
}

function followers(town: Town, pieces: readonly Piece[], piece: Piece): readonly number[] {
  const at = piece.to;
  const tags = town.nodes[at]![2] ?? {};
  const isBlocked = tags.barrier === 'bollard';
  const leaving = pieces.flatMap((each, number) => (each.from === at ? [number] : []));
  const isBack = (number: number): boolean => pieces[number]!.way === piece.way && pieces[number]!.to === piece.from;
  const rules = (town.restrictions ?? []).filter((rule) => rule.via === at && rule.from === piece.way);
  const only = rules.filter((rule) => rule.kind.startsWith('only_')).map((rule) => rule.to);
  const not = rules.filter((rule) => rule.kind.startsWith('no_')).map((rule) => rule.to);
  const onward = leaving.filter((number) => {
    const { way } = pieces[number]!;
    const isForbidden = not.includes(way) || (only.length > 0 && !only.includes(way));
    return !isBlocked && !isBack(number) && !isForbidden;
  });
  return onward.length > 0 ? onward : leaving.filter(isBack);
}

function waitAt(town: Town, node: string, { signalSec, gateSec }: Waits): number {
  const tags = town.nodes[node]![2] ?? {};
  const isOpened = tags.barrier === 'gate' && tags.access === undefined;
  return (tags.highway === 'traffic_signals' ? signalSec : 0) + (isOpened ? gateSec : 0);
}

function entered(town: Town, piece: Piece, next: Piece): number {
  const isPrivate = (way: number): boolean => town.ways[way]![1]?.access === 'private';
  const isGuarded = town.nodes[piece.to]![2]?.access === 'private';
  return (!isPrivate(piece.way) && isPrivate(next.way) ? 1 : 0) + (isGuarded ? 1 : 0);
}
