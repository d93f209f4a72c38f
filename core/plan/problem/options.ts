import type { Book, Property, Treatment, Zone } from '../../book/index.ts';
import { acresPerHour } from '../../calibrate/index.ts';
import type { ZoneDemand } from '../../demand/index.ts';
import type { ZoneMeasure } from '../../measure/index.ts';
import { type Method, methodsFor, reach } from '../../reach/index.ts';
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
};

export type OptionAnswer = { readonly options: readonly Option[]; readonly refusal: UnplaceableReason };

const SQUARE_FEET_PER_ACRE = 43_560;

/** All ways for a rig to do a task, and why the others cannot. */
export function optionsFor(book: Book, equipped: EquippedRig, facts: TaskFacts, wetGround: boolean): OptionAnswer {
  const options: Option[] = [];
  const refusals: UnplaceableReason[] = [];
  const rigId = equipped.rig.id;
  for (const method of methodsFor(book, stepTreatment(facts))) {
    const { property, zone, measure: zoneMeasure, farthestFt } = facts;
    const question = {
      book,
      property,
      zone,
      zoneMeasure,
      farthestFt,
      treatment: stepTreatment(facts),
      method,
      rig: equipped.rig,
      wetGround,
    };
    const answer = reach(question);
    if (!answer.can) {
      refusals.push({ rigId, code: answer.reason, words: answer.words });
      continue;
    }
    const option = optionOf(book, equipped, facts, method, answer.tight);
    const excess = rateExcess(book, facts, option === null ? 1 : rateFactor(book, facts, method));
    if (option === null)
      refusals.push({
        rigId,
        code: 'no-compartment',
        words: `${methodName(book, method)}: nothing on it holds the material`,
      });
    else if (excess !== '')
      refusals.push({ rigId, code: 'rate-above-label', words: `${methodName(book, method)}: ${excess}` });
    else options.push(option);
  }
  return { options, refusal: joinRefusals(rigId, refusals) };
}

/** A starter step is spread like any granular product, whatever the treatment that it belongs to. */
function stepTreatment(facts: TaskFacts): Treatment {
  const { treatment, demand } = facts;
  if (treatment.kind !== 'seed' || demand.what !== 'spread' || treatment.starter === undefined) return treatment;
  const { productId, rate } = treatment.starter;
  const { id, name, coverage, flagFirst, flagMin } = treatment;
  return { id, name, coverage, flagFirst, flagMin, kind: 'spread', productId, rate };
}

function optionOf(book: Book, equipped: EquippedRig, facts: TaskFacts, method: Method, tight: boolean): Option | null {
  return method.kind === 'machine'
    ? machineOption(equipped, facts, method, tight, rateFactor(book, facts, method))
    : handOption(equipped, facts, method, tight, rateFactor(book, facts, method));
}

function machineOption(
  equipped: EquippedRig,
  facts: TaskFacts,
  method: Method & { readonly kind: 'machine' },
  tight: boolean,
  factor: number,
): Option | null {
  const machine = equipped.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  if (machine === undefined || head === undefined) return null;
  const rate = acresPerHour(head.speedMph, head.swathFt, head.fieldEfficiency) * SQUARE_FEET_PER_ACRE;
  const minutes = (facts.demand.treatedSqFt / rate) * 60 * facts.demand.passes;
  const compartment = equipped.compartmentOf(`${machine.id}/${head.compartmentIds[0] ?? ''}`);
  const draws = drawsOn(compartment, facts.demand, factor);
  if (draws === null) return null;
  return {
    method,
    serviceMs: minutesToMs(minutes),
    draws,
    machineIds: [machine.id],
    handMethodId: '',
    headId: head.id,
    tight,
  };
}

function handOption(
  equipped: EquippedRig,
  facts: TaskFacts,
  method: Method & { readonly kind: 'hand' },
  tight: boolean,
  factor: number,
): Option | null {
  const hand = equipped.handMethods.find((each) => each.id === method.handMethodId);
  if (hand === undefined) return null;
  const minutes = (facts.demand.treatedSqFt / 1000) * hand.minutesPer1000SqFt * facts.demand.passes;
  const from = hand.drawsFrom;
  const key = from.kind === 'machine' ? `${from.machineId}/${from.compartmentId}` : hand.id;
  const draws = drawsOn(equipped.compartmentOf(key), facts.demand, factor);
  if (draws === null) return null;
  const machineIds = from.kind === 'machine' ? [from.machineId] : [];
  return { method, serviceMs: minutesToMs(minutes), draws, machineIds, handMethodId: hand.id, headId: '', tight };
}

function drawsOn(compartment: number, demand: ZoneDemand, factor: number): readonly Draw[] | null {
  if (demand.what === 'aerate') return [];
  if (compartment < 0) return null;
  const amount = demand.what === 'spray' ? demand.volumeGal * factor : demand.weightLb;
  return [{ compartment, parts: demandParts(amount) }];
}

/** Carrier that the method really delivers, over the carrier of the mix; 1 where it was never calibrated. */
function rateFactor(book: Book, facts: TaskFacts, method: Method): number {
  if (facts.demand.what !== 'spray') return 1;
  const mix = book.mixes.find((each) => each.id === facts.demand.materialId);
  const delivered =
    method.kind === 'machine'
      ? book.machines.find((each) => each.id === method.machineId)?.heads.find((each) => each.id === method.headId)
          ?.deliveredGalPer1000SqFt
      : book.handMethods.find((each) => each.id === method.handMethodId)?.deliveredGalPer1000SqFt;
  return mix === undefined || delivered === undefined ? 1 : delivered / mix.carrierGalPer1000SqFt;
}

/** Where the delivered carrier drags a product over its label limit: the arithmetic, else ''. */
function rateExcess(book: Book, facts: TaskFacts, factor: number): string {
  if (factor <= 1) return '';
  const mix = book.mixes.find((each) => each.id === facts.demand.materialId);
  for (const part of mix?.parts ?? []) {
    const product = book.products.find((each) => each.id === part.productId);
    const most = product?.label.mostPerApplication;
    const applied = part.amountPer1000SqFt * factor;
    if (product === undefined || most === undefined || applied <= most * (1 + 1e-9)) continue;
    return `delivers ${factor.toFixed(2)} times the carrier of the mix, so ${product.name} becomes ${applied.toFixed(3)} ${product.unit} per 1,000 ft2, label limit ${most}`;
  }
  return '';
}

function methodName(book: Book, method: Method): string {
  if (method.kind === 'hand')
    return book.handMethods.find((each) => each.id === method.handMethodId)?.name ?? method.handMethodId;
  return book.machines.find((each) => each.id === method.machineId)?.name ?? method.machineId;
}

/** One reason for a rig: the methods that it carries speak first; those left at the shop only where nothing else is to be said. */
function joinRefusals(rigId: string, refusals: readonly UnplaceableReason[]): UnplaceableReason {
  const carried = refusals.filter((each) => each.code !== 'not-carried');
  const telling = carried.length > 0 ? carried : refusals;
  const first = telling[0];
  if (first === undefined)
    return { rigId, code: 'no-method', words: 'no machine or hand method of the book is for this treatment' };
  const words = [...new Set(telling.map((each) => each.words))].join('; ');
  const codes = new Set(telling.map((each) => each.code));
  return { rigId, code: codes.size === 1 ? first.code : 'no-single-cause', words };
}
