import type { Issue } from '../../base/index.ts';
import type { Book, Property, Treatment, Zone } from '../../book/index.ts';
import { type Applicator, type RateCheck, rateCheck, rateIssue } from '../../calibrate/index.ts';
import type { ZoneDemand } from '../../demand/index.ts';
import { standsFor, type ZoneMeasure } from '../../measure/index.ts';
import type { PassGround } from '../../passes/index.ts';
import {
  drawnCompartment,
  type Method,
  methodName,
  methodsFor,
  NO_ROOM,
  reach,
  treatingMinutes,
} from '../../reach/index.ts';
import { drawsOn } from './draws.ts';
import { type Driven, drivenWork } from './driven.ts';
import { type OverRate, overRates } from './overlap-rates.ts';
import type { EquippedRig } from './rigs.ts';
import { areaUnits, minutesToMs } from './scale.ts';
import { type Tool, trimmedBy } from './trim.ts';
import type { Draw, OpGround, UnplaceableReason } from './types.ts';

/** One treatment step on one zone, with everything that is known of it before a rig is chosen. */
export type TaskFacts = {
  readonly property: Property;
  readonly zone: Zone;
  readonly measure: ZoneMeasure;
  readonly treatment: Treatment;
  readonly demand: ZoneDemand;
  readonly farthestFt: number;
  /** What is treated of the zone, for passes; empty where it has no outline. */
  readonly ground: () => PassGround;
};

/** A hand tool that treats what the machine of an option does not reach. */
export type Trim = Pick<Option, 'method' | 'handMethodId' | 'areaUnits' | 'serviceMs' | 'draws'>;

/** A way for one rig to do one task. */
export type Option = {
  readonly method: Method;
  /** Ground that the method itself treats. */
  readonly areaUnits: number;
  readonly serviceMs: number;
  readonly draws: readonly Draw[];
  /** Ids of the machines that have to be off the rig for it. */
  readonly machineIds: readonly string[];
  readonly handMethodId: string;
  readonly headId: string;
  readonly tight: boolean;
  /** True where the whole task takes less than the hand method needs to work evenly. */
  readonly scant: boolean;
  /** What the passes come to; null where time and draws come from elsewhere. */
  readonly ground: OpGround | null;
  readonly trim: Trim | null;
  /** Ground worth a hand trim for which the rig has no tool, whole ft2. */
  readonly untrimmedUnits: number;
};

export type OptionAnswer = {
  readonly options: readonly Option[];
  readonly refusal: UnplaceableReason;
  /** Delivered rates that differ from the mix by more than 5 %. */
  readonly issues: readonly Issue[];
  /** Average rates above a label's most for one application. */
  readonly overRates: readonly OverRate[];
};

/** What is emptied, and what has to be off the rig, when a method is used. */
type Equipment = Pick<Option, 'machineIds' | 'handMethodId' | 'headId'> & { readonly compartment: number };

/** All ways for a rig to do a task, and why the others cannot. */
export function optionsFor(book: Book, equipped: EquippedRig, facts: TaskFacts, wetGround: boolean): OptionAnswer {
  const ways: Way[] = [];
  const refusals: UnplaceableReason[] = [];
  const issues: Issue[] = [];
  const over: OverRate[] = [];
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
    const { driven, issues: faults } = drivenWork(book, facts, method);
    const factor = rateFactor(rate);
    const option = optionOf(book, equipped, facts, method, { tight: answer.tight, factor, driven });
    if (option === null) refuse('no-compartment', `${name}: nothing on it holds the material`);
    else if (found?.severity === 'error') refuse('rate-above-label', found.message);
    else if (driven !== null && driven.ground.leftUnits >= option.areaUnits)
      refuse('no-room-for-swath', `${name}: ${NO_ROOM}`);
    else {
      ways.push({ option, driven, factor });
      issues.push(...faults);
      if (found !== null) issues.push(found);
      over.push(...overRates(book, facts, method, coveredPerReached(option, driven), factor));
    }
  }
  const options = ways.map((each) => withTrim(book, equipped, facts, each, ways));
  return { options, refusal: joinRefusals(equipped.rig.id, refusals), issues, overRates: over };
}

/** Ground gone over as a multiple of the ground that the method reaches: 1 where no passes say otherwise. */
function coveredPerReached({ areaUnits: whole }: Option, driven: Driven | null): number {
  if (driven === null) return 1;
  return driven.ground.coveredUnits / Math.max(1, whole - driven.ground.leftUnits);
}

type Way = { readonly option: Option; readonly driven: Driven | null; readonly factor: number };

/** A machine leaves ground that is trimmed by hand where the rig has a tool for it, and enough is left to be worth it. */
function withTrim(
  book: Book,
  equipped: EquippedRig,
  facts: TaskFacts,
  { option, driven }: Way,
  ways: readonly Way[],
): Option {
  const left = driven?.ground.leftUnits ?? 0;
  if (driven === null || left === 0 || left < driven.trimFromSqFt) return option;
  const tools = ways.flatMap(({ option: own, factor }): readonly Tool[] => {
    const hand = equipped.handMethods.find((each) => each.id === own.handMethodId);
    return hand === undefined ? [] : [{ hand, option: own, factor }];
  });
  const trim = trimmedBy(book, { equipped, facts }, option, tools, left, option.areaUnits);
  if (trim === null) return { ...option, untrimmedUnits: left };
  return { ...option, areaUnits: option.areaUnits - left, ground: { ...driven.ground, leftUnits: 0 }, trim };
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
  { tight, factor, driven }: { readonly tight: boolean; readonly factor: number; readonly driven: Driven | null },
): Option | null {
  const { treatedSqFt, passes } = facts.demand;
  const minutes =
    driven === null ? treatingMinutes(book, method, treatedSqFt, passes, facts.farthestFt) : driven.minutes;
  const equipment = equipmentOf(equipped, method);
  const covered = factor * (driven?.coveredShare ?? 1);
  const draws = equipment === null ? null : drawsOn(equipment.compartment, facts.demand, covered);
  if (minutes === null || equipment === null || draws === null) return null;
  const { machineIds, handMethodId, headId } = equipment;
  const hand = equipped.handMethods.find((each) => each.id === handMethodId);
  const scant = facts.demand.what === 'spray' && facts.demand.volumeGal * factor < (hand?.leastVolumeGal ?? 0);
  return {
    method,
    areaUnits: areaUnits(treatedSqFt),
    serviceMs: minutesToMs(minutes),
    draws,
    machineIds,
    handMethodId,
    headId,
    tight,
    scant,
    ground: driven?.ground ?? null,
    trim: null,
    untrimmedUnits: 0,
  };
}

function equipmentOf(equipped: EquippedRig, method: Method): Equipment | null {
  if (method.kind === 'machine') {
    const machine = equipped.machines.find((each) => each.id === method.machineId);
    const head = machine?.heads.find((each) => each.id === method.headId);
    if (machine === undefined || head === undefined) return null;
    const compartment = equipped.compartmentOf(`${machine.id}/${drawnCompartment(machine, head)?.id ?? ''}`);
    return { compartment, machineIds: [machine.id], handMethodId: '', headId: head.id };
  }
  const hand = equipped.handMethods.find((each) => each.id === method.handMethodId);
  if (hand === undefined) return null;
  const from = hand.drawsFrom;
  const key = from.kind === 'machine' ? `${from.machineId}/${from.compartmentId}` : hand.id;
  const machineIds = from.kind === 'machine' ? [from.machineId] : [];
  return { compartment: equipped.compartmentOf(key), machineIds, handMethodId: hand.id, headId: '' };
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
