import type { Issue } from '../../base/index.ts';
import type { Book, Compartment, Head, Machine, Property, Treatment, Zone } from '../../book/index.ts';
import { type Applicator, type RateCheck, rateCheck, rateIssue } from '../../calibrate/index.ts';
import type { ZoneDemand } from '../../demand/index.ts';
import { standsFor, type ZoneMeasure } from '../../measure/index.ts';
import { type Method, methodName, methodsFor, reach, treatingMinutes } from '../../reach/index.ts';
import type { EquippedRig } from './rigs.ts';
import { demandParts, minutesToMs } from './scale.ts';
import type { Draw, UnplaceableReason } from './types.ts';

/** One treatment step on one zone, with everything that is known of it before a rig is chosen. */
export type TaskFacts = {
  readonly property: Property;
  readonly zone: Zone;
  readonly measure: ZoneMeasure;
  readonly treatment: Treatment;
  readonly demand: ZoneDemand;
  readonly farthestFt: number;
};

/** A way for one rig to do one task. */
export type Option = {
  readonly method: Method;
  readonly serviceMs: number;
  readonly draws: readonly Draw[];
  /** Ids of the machines that have to be off the rig for it. */
  readonly machineIds: readonly string[];
  readonly handMethodId: string;
  readonly headId: string;
  readonly tight: boolean;
  /** True where the whole task takes less than the hand method needs to work evenly. */
  readonly scant: boolean;
};

export type OptionAnswer = {
  readonly options: readonly Option[];
  readonly refusal: UnplaceableReason;
  /** Delivered rates that differ from the mix by more than 5 %. */
  readonly issues: readonly Issue[];
};

/** What is emptied, and what has to be off the rig, when a method is used. */
type Equipment = Pick<Option, 'machineIds' | 'handMethodId' | 'headId'> & { readonly compartment: number };

/** All ways for a rig to do a task, and why the others cannot. */
export function optionsFor(book: Book, equipped: EquippedRig, facts: TaskFacts, wetGround: boolean): OptionAnswer {
  const options: Option[] = [];
  const refusals: UnplaceableReason[] = [];
  const issues: Issue[] = [];
  const refuse = (code: string, words: string): void => void refusals.push({ rigId: equipped.rig.id, code, words });
  const { property, zone, measure: zoneMeasure, farthestFt } = facts;
  const treatment = stepTreatment(facts);
  const stands = () => standsFor(property, zone);
  for (const method of methodsFor(book, treatment)) {
    const rig = equipped.rig;
    const answer = reach({ book, property, zone, zoneMeasure, farthestFt, stands, treatment, method, rig, wetGround });
    if (!answer.can) {
      refuse(answer.reason, answer.words);
      continue;
    }
    const name = methodName(book, method);
    const rate = checkRate(book, facts, method);
    const found = rate === null || rate.kind === 'not-calibrated' ? null : rateIssue(rate, name);
    const option = optionOf(book, equipped, facts, method, { tight: answer.tight, factor: rateFactor(rate) });
    if (option === null) refuse('no-compartment', `${name}: nothing on it holds the material`);
    else if (found?.severity === 'error') refuse('rate-above-label', found.message);
    else {
      options.push(option);
      if (found !== null) issues.push(found);
    }
  }
  return { options, refusal: joinRefusals(equipped.rig.id, refusals), issues };
}

/** A starter step is spread like any granular product, whatever the treatment that it belongs to. */
function stepTreatment(facts: TaskFacts): Treatment {
  const { treatment, demand } = facts;
  if (treatment.kind !== 'seed' || demand.what !== 'spread' || treatment.starter === undefined) return treatment;
  const { productId, rate } = treatment.starter;
  const { id, name, coverage, flagFirst, flagMin } = treatment;
  return { id, name, coverage, flagFirst, flagMin, kind: 'spread', productId, rate };
}

function optionOf(
  book: Book,
  equipped: EquippedRig,
  facts: TaskFacts,
  method: Method,
  { tight, factor }: { readonly tight: boolean; readonly factor: number },
): Option | null {
  const { treatedSqFt, passes } = facts.demand;
  const minutes = treatingMinutes(book, method, treatedSqFt, passes);
  const equipment = equipmentOf(equipped, method);
  const draws = equipment === null ? null : drawsOn(equipment.compartment, facts.demand, factor);
  if (minutes === null || equipment === null || draws === null) return null;
  const { machineIds, handMethodId, headId } = equipment;
  const hand = equipped.handMethods.find((each) => each.id === handMethodId);
  const scant = facts.demand.what === 'spray' && facts.demand.volumeGal * factor < (hand?.leastVolumeGal ?? 0);
  return { method, serviceMs: minutesToMs(minutes), draws, machineIds, handMethodId, headId, tight, scant };
}

function equipmentOf(equipped: EquippedRig, method: Method): Equipment | null {
  if (method.kind === 'machine') {
    const machine = equipped.machines.find((each) => each.id === method.machineId);
    const head = machine?.heads.find((each) => each.id === method.headId);
    if (machine === undefined || head === undefined) return null;
    const compartment = equipped.compartmentOf(`${machine.id}/${drawnFrom(machine, head)}`);
    return { compartment, machineIds: [machine.id], handMethodId: '', headId: head.id };
  }
  const hand = equipped.handMethods.find((each) => each.id === method.handMethodId);
  if (hand === undefined) return null;
  const from = hand.drawsFrom;
  const key = from.kind === 'machine' ? `${from.machineId}/${from.compartmentId}` : hand.id;
  const machineIds = from.kind === 'machine' ? [from.machineId] : [];
  return { compartment: equipped.compartmentOf(key), machineIds, handMethodId: hand.id, headId: '' };
}

/** What each kind of work is done out of, the more fitting vessel first. */
const VESSELS: Readonly<Record<Head['purpose'], readonly Compartment['kind'][]>> = {
  spray: ['tank'],
  spread: ['hopper', 'seed-box'],
  seed: ['seed-box', 'hopper'],
  aerate: [],
};

/** Id of the compartment that a head empties; '' for none. A head may list others as well, such as the box of another use. */
function drawnFrom(machine: Machine, head: Head): string {
  const listed = machine.compartments.filter((each) => head.compartmentIds.includes(each.id));
  const found = VESSELS[head.purpose].flatMap((kind) => listed.filter((each) => each.kind === kind));
  return found[0]?.id ?? '';
}

function drawsOn(compartment: number, demand: ZoneDemand, factor: number): readonly Draw[] | null {
  if (demand.what === 'aerate') return [];
  if (compartment < 0) return null;
  const amount = demand.what === 'spray' ? demand.volumeGal * factor : demand.weightLb;
  return [{ compartment, parts: demandParts(amount) }];
}

/** What the method delivers against what the mix asks for; null where nothing is sprayed. */
function checkRate(book: Book, facts: TaskFacts, method: Method): RateCheck | null {
  const sprays = facts.demand.what === 'spray';
  const mix = sprays ? book.mixes.find((each) => each.id === facts.demand.materialId) : undefined;
  const applicator = applicatorOf(book, method);
  return mix === undefined || applicator === undefined ? null : rateCheck(mix, applicator, book.products);
}

function applicatorOf(book: Book, method: Method): Applicator | undefined {
  if (method.kind === 'hand') return book.handMethods.find((each) => each.id === method.handMethodId);
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  return machine === undefined || head === undefined ? undefined : { ...head, name: `${machine.name}, ${head.name}` };
}

/** Delivered carrier over the carrier of the mix: the tank empties by what is delivered. 1 where it was never calibrated. */
function rateFactor(check: RateCheck | null): number {
  return check === null || check.kind === 'not-calibrated' ? 1 : 1 + check.difference;
}

/** One reason for a rig: the methods that it carries speak first; those left at the shop only where nothing else is to be said. */
function joinRefusals(rigId: string, refusals: readonly UnplaceableReason[]): UnplaceableReason {
  const carried = refusals.filter((each) => each.code !== 'not-carried');
  const telling = carried.length > 0 ? carried : refusals;
  const first = telling[0];
  if (first === undefined) {
    return { rigId, code: 'no-method', words: 'no machine or hand method of the book is for this treatment' };
  }
  const words = [...new Set(telling.map((each) => each.words))].join('; ');
  const codes = new Set(telling.map((each) => each.code));
  return { rigId, code: codes.size === 1 ? first.code : 'no-single-cause', words };
}
