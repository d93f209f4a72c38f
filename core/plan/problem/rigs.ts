import type { Book, Compartment, HandMethod, Machine, Prices, Rig } from '../../book/index.ts';
import {
  bagToMsPerPart,
  capacityParts,
  flowToMsPerPart,
  milesCostPerM,
  minutesToMs,
  NANO_PER_DOLLAR,
  WATER_WEIGHT_PER_PART,
  wagePerMs,
} from './scale.ts';
import type { ProblemCompartment, ProblemRig, Stock } from './types.ts';

/** A rig of the book with the compartments that its machines and hand methods bring. */
export type EquippedRig = {
  readonly rig: Rig;
  readonly machines: readonly Machine[];
  readonly handMethods: readonly HandMethod[];
  readonly compartments: readonly ProblemCompartment[];
  /** Number of the compartment that holds "machineId/compartmentId" or the hand method's own vessel; -1 where there is none. */
  readonly compartmentOf: (key: string) => number;
  readonly sumpParts: number;
};

type Vessel = { readonly id: string; readonly kind: 'tank' | 'dry'; readonly capacity: number; readonly sump: number };

/** Gathers what a rig carries. References that lead nowhere are left out: the checks name them. */
export function equipRig(book: Book, rig: Rig, stocks: readonly Stock[]): EquippedRig {
  const machines = rig.machines.flatMap((carried) => book.machines.filter((each) => each.id === carried.machineId));
  const handMethods = rig.handMethodIds.flatMap((id) => book.handMethods.filter((each) => each.id === id));
  const numbers = new Map<string, number>();
  const vessels: Vessel[] = [];
  for (const machine of machines) addMachineVessels(machine, vessels, numbers);
  for (const hand of handMethods) addHandVessel(hand, vessels, numbers);
  const fill = fillTimes(rig, stocks);
  return {
    rig,
    machines,
    handMethods,
    compartments: vessels.map((vessel) => ({
      id: vessel.id,
      kind: vessel.kind,
      capacityParts: capacityParts(vessel.capacity - vessel.sump),
      fillMsPerPart: fill[vessel.kind],
    })),
    compartmentOf: (key) => numbers.get(key) ?? -1,
    sumpParts: Math.ceil(vessels.reduce((sum, each) => sum + each.sump, 0) * 100),
  };
}

/** Tanks that one head lists together run together, and count as one compartment. */
function addMachineVessels(machine: Machine, vessels: Vessel[], numbers: Map<string, number>): void {
  for (const group of joinedCompartments(machine)) {
    const id = `${machine.id}/${group.map((each) => each.id).join('+')}`;
    for (const each of group) numbers.set(`${machine.id}/${each.id}`, vessels.length);
    vessels.push({
      id,
      kind: group[0]?.kind === 'tank' ? 'tank' : 'dry',
      capacity: group.reduce((sum, each) => sum + (each.kind === 'tank' ? each.capacityGal : each.capacityLb), 0),
      sump: group.reduce((sum, each) => sum + (each.kind === 'tank' ? each.sumpGal : 0), 0),
    });
  }
}

/** Groups the compartments of a machine that some head draws on at the same time. */
function joinedCompartments(machine: Machine): Compartment[][] {
  const groups = machine.compartments.map((each) => [each]);
  for (const head of machine.heads) {
    const [first, ...rest] = groups.filter((group) => group.some((each) => head.compartmentIds.includes(each.id)));
    if (first === undefined) continue;
    for (const other of rest.filter((group) => group[0]?.kind === first[0]?.kind)) {
      first.push(...other);
      groups.splice(groups.indexOf(other), 1);
    }
  }
  return groups;
}

function addHandVessel(hand: HandMethod, vessels: Vessel[], numbers: Map<string, number>): void {
  const from = hand.drawsFrom;
  if (from.kind === 'machine') return;
  numbers.set(hand.id, vessels.length);
  if (from.kind === 'own-hopper') vessels.push({ id: hand.id, kind: 'dry', capacity: from.capacityLb, sump: 0 });
  else vessels.push({ id: hand.id, kind: 'tank', capacity: from.capacityGal, sump: from.sumpGal });
}

function fillTimes(rig: Rig, stocks: readonly Stock[]): { readonly tank: number; readonly dry: number } {
  const bags = stocks
    .filter((each) => each.kind === 'dry')
    .map((each) => bagToMsPerPart(rig.minutesPerBag, each.bagParts / 100));
  return { tank: flowToMsPerPart(rig.nurseFlowGpm), dry: Math.max(0, ...bags) };
}

/** The rig in whole numbers. `home` is the number of its station. */
export function problemRig(equipped: EquippedRig, prices: Prices, home: number): ProblemRig {
  const { rig } = equipped;
  const pay = wagePerMs(prices.wagePerHour * rig.crew);
  const machinesLb = equipped.machines.reduce((sum, each) => sum + each.emptyWeightLb, 0);
  return {
    rigId: rig.id,
    home,
    shiftStartMs: minutesToMs(rig.shiftStartMin),
    shiftMs: minutesToMs(rig.shiftMin),
    overtimeMs: minutesToMs(rig.overtimeMin),
    morningMs: minutesToMs(rig.morningMin),
    eveningMs: minutesToMs(rig.eveningMin),
    breakAfterMs: rig.breakMin > 0 ? minutesToMs(rig.breakAfterMin ?? 0) : -1,
    breakMs: minutesToMs(rig.breakMin),
    costPerMs: pay,
    overtimeCostPerMs: Math.round(pay * Math.max(0, prices.overtimeFactor - 1)),
    costPerM: milesCostPerM(prices.perMile),
    costPerDay: Math.round(prices.perRigDay * NANO_PER_DOLLAR),
    compartments: equipped.compartments,
    nurseParts: capacityParts(rig.nurseTankGal),
    // Bags on a machine ride with it wherever the rig goes, so they add to what the rig holds.
    bagPlaces: equipped.machines.reduce((sum, each) => sum + each.bagPlaces, rig.bagPlaces),
    refillMs: minutesToMs(rig.refillMin),
    midZoneMs: minutesToMs(rig.midZoneMin),
    cargoLimit: Math.max(
      0,
      Math.floor((rig.payloadLb - machinesLb) * 10_000) - equipped.sumpParts * WATER_WEIGHT_PER_PART,
    ),
  };
}
