import type { Gate, Position, Zone } from '../../book/index.ts';
import { distanceMetres } from '../../geometry/index.ts';
import { freeId } from '../drafts.ts';
import type { GateRecord, LawnRecord } from '../record.ts';
import { samePlace } from '../same-outline.ts';
import { type Merged, sameFigure } from './shape.ts';

/** Gates nearer to each other than this are one, metres. Common practice, no source. */
const SAME_GATE_M = 3;

type GateFacts = Pick<GateRecord, 'id' | 'name' | 'clearWidthIn' | 'at' | 'locked' | 'zoneIds'>;
export type MergedGates = Merged<readonly Gate[]> & { readonly zones: readonly Zone[] };

/** The gates of a property with those of the file, and the zones with the gates that lead to them. */
export function mergeGates(
  before: readonly Gate[],
  zones: readonly Zone[],
  records: readonly GateRecord[],
  lawns: readonly LawnRecord[],
  idOf: ReadonlyMap<string, string>,
): MergedGates {
  const gates = [...before];
  const free = new Set(before.keys());
  const words: string[] = [];
  let after = zones;
  for (const facts of [...records, ...widthsOf(lawns)]) {
    const place = findGate(gates, free, facts);
    const gate = place === null ? undefined : gates[place];
    if (place === null || gate === undefined) {
      if (facts.id === null && facts.at === null && before.length > 0) {
        words.push(
          `gate of ${facts.clearWidthIn} in is not taken: there are ${before.length} gates, none of that width`,
        );
        continue;
      }
      const added = newGate(gates, facts);
      gates.push(added);
      words.push(`gate ${added.name} of ${added.clearWidthIn} in added`);
      after = leadTo(after, added.id, facts.zoneIds, idOf);
      continue;
    }
    free.delete(place);
    const merged = mergeGate(gate, facts);
    gates[place] = merged.value;
    words.push(...merged.words);
    if (facts.zoneIds !== null) after = leadTo(after, gate.id, facts.zoneIds, idOf);
  }
  return { value: gates, words, zones: after };
}

/** Widths that stand with lawns, each once. */
function widthsOf(lawns: readonly LawnRecord[]): readonly GateFacts[] {
  const widths = new Set(lawns.flatMap((each) => each.gateIn ?? []));
  return [...widths].map((clearWidthIn) => ({
    id: null,
    name: null,
    clearWidthIn,
    at: null,
    locked: null,
    zoneIds: null,
  }));
}

function findGate(gates: readonly Gate[], free: ReadonlySet<number>, facts: GateFacts): number | null {
  const left = [...free];
  const find = (fits: (gate: Gate) => boolean): number | undefined =>
    left.find((place) => {
      const gate = gates[place];
      return gate !== undefined && fits(gate);
    });
  const named = facts.id === null ? undefined : find((gate) => gate.id === facts.id);
  if (named !== undefined) return named;
  const { at } = facts;
  if (at !== null) return find((gate) => gate.at !== undefined && near(gate.at, at)) ?? null;
  if (facts.id !== null) return null;
  const alike = find((gate) => sameFigure(gate.clearWidthIn, facts.clearWidthIn));
  const [only] = left;
  return alike ?? (gates.length === 1 && only !== undefined ? only : null);
}

function near(left: Position, right: Position): boolean {
  return distanceMetres(left, right) <= SAME_GATE_M;
}

function mergeGate(gate: Gate, facts: GateFacts): Merged<Gate> {
  const words: string[] = [];
  let after = gate;
  if (!sameFigure(gate.clearWidthIn, facts.clearWidthIn)) {
    after = { ...after, clearWidthIn: facts.clearWidthIn };
    words.push(`gate ${gate.name} ${inches(gate.clearWidthIn)} → ${inches(facts.clearWidthIn)} in`);
  }
  if (facts.name !== null && facts.name !== gate.name) {
    after = { ...after, name: facts.name };
    words.push(`gate ${gate.name} is now called ${facts.name}`);
  }
  if (facts.locked !== null && facts.locked !== gate.locked) {
    after = { ...after, locked: facts.locked };
    words.push(`gate ${gate.name} is ${facts.locked ? '' : 'not '}locked`);
  }
  if (facts.at !== null && (gate.at === undefined || !samePlace(gate.at, facts.at))) {
    after = { ...after, at: facts.at };
    words.push(`place of gate ${gate.name}`);
  }
  return { value: after, words };
}

function newGate(gates: readonly Gate[], facts: GateFacts): Gate {
  const id = freeId(facts.id ?? 'gate', (each) => gates.some((gate) => gate.id === each));
  const at = facts.at === null ? {} : { at: facts.at };
  return { id, name: facts.name ?? id, clearWidthIn: facts.clearWidthIn, locked: facts.locked ?? false, ...at };
}

/** Zones with a gate before those that are named, or before all of them. */
function leadTo(
  zones: readonly Zone[],
  gateId: string,
  zoneIds: readonly string[] | null,
  idOf: ReadonlyMap<string, string>,
): readonly Zone[] {
  const wanted = zoneIds === null ? null : new Set(zoneIds.map((each) => idOf.get(each) ?? each));
  return zones.map((zone) => {
    const has = zone.gateIds.includes(gateId);
    const should = wanted === null || wanted.has(zone.id);
    if (has === should) return zone;
    const gateIds = should ? [...zone.gateIds, gateId] : zone.gateIds.filter((each) => each !== gateId);
    return { ...zone, gateIds };
  });
}

function inches(value: number): string {
  return String(Math.round(value * 100) / 100);
}
