import fc from 'fast-check';
import type { Plan } from '../../../../core/plan/result/index.ts';

type Slot = { readonly holder: Record<string, unknown> | unknown[]; readonly key: string | number };

/** Every place of a value that holds something. */
function slotsOf(value: unknown, slots: Slot[] = []): Slot[] {
  if (typeof value !== 'object' || value === null) return slots;
  for (const key of Object.keys(value)) {
    const holder = value as Record<string, unknown>;
    slots.push({ holder, key });
    slotsOf(holder[key], slots);
  }
  return slots;
}

const WORDS = [
  '',
  'acre',
  'birch',
  'shop',
  'hydrant',
  'rider/tank',
  'rider/hopper',
  'mix-two',
  'north',
  '__proto__',
  'é"\\',
];
const figure = fc.oneof(
  fc.constantFrom(0, -1, 1e300, -1e300, 1e-300, 9e15, 0.5),
  fc.integer({ min: -10, max: 100_000 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

type Pick = readonly [place: number, way: number, figure: number, word: string];

/** What to change of a plan: a member by its number, and the figure or word that it becomes. */
export const somePick = fc.tuple(fc.nat(5000), fc.nat(3), figure, fc.constantFrom(...WORDS));

/** Changes some of a plan's members: figures, words, flags; drops, doubles and swaps members of lists. */
export function mutate(plan: Plan, picks: readonly Pick[]): unknown {
  const copy = structuredClone(plan);
  for (const [pick, way, number, word] of picks) {
    const slots = slotsOf(copy);
    const slot = slots[pick % slots.length];
    if (slot === undefined) continue;
    const holder = slot.holder as Record<string, unknown>;
    const value = holder[slot.key];
    if (typeof value === 'number') holder[slot.key] = number;
    else if (typeof value === 'string') holder[slot.key] = word;
    else if (typeof value === 'boolean') holder[slot.key] = !value;
    else if (Array.isArray(value)) changeList(value, way, pick);
  }
  return copy;
}

function changeList(list: unknown[], way: number, pick: number): void {
  const at = list.length === 0 ? 0 : pick % list.length;
  if (way % 4 === 0) list.splice(at, 1);
  else if (way % 4 === 1 && list.length > 0) list.splice(at, 0, structuredClone(list[at]));
  else if (way % 4 === 2) list.reverse();
  else list.length = 0;
}
