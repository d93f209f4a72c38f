import type { Book, HandMethod, Machine, Prices, Rig } from '../../book/index.ts';
import { joinedCompartments } from '../../reach/index.ts';
import { milesCostPerM, NANO_PER_DOLLAR, overtimePerMs, wagePerMs } from '../../units/index.ts';
import { bagCompartment, bagMsPerPart, bagPlacesParts, bagsGoInto, pourMsPerPart } from './bags.ts';
import { capacityParts, demandParts, flowToMsPerPart, minutesToMs, WATER_WEIGHT_PER_PART } from './scale.ts';
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

/** Gathers what a rig carries. References that lead nowhere are left out: the checks name them. */
export function equipRig(book: Book, rig: Rig, stocks: readonly Stock[]): EquippedRig {
  const machines = rig.machines.flatMap((carried) => book.machines.filter((each) => each.id === carried.machineId));
  const handMethods = rig.handMethodIds.flatMap((id) => book.handMethods.filter((each) => each.id === id));
  const gathered: Gathered = { rig, stocks, compartments: [], numbers: new Map(), sumps: [] };
  for (const machine of machines) addMachineVessels(gathered, machine);
  for (const hand of handMethods) addHandVessel(gathered, hand);
  return {
    rig,
    machines,
    handMethods,
    compartments: gathered.compartments,
    compartmentOf: (key) => gathered.numbers.get(key) ?? -1,
    sumpParts: Math.ceil(gathered.sumps.reduce((sum, each) => sum + each, 0) * 100),
  };
}

/** Compartments while they are gathered; sumps in gallons. */
type Gathered = {
  readonly rig: Rig;
  readonly stocks: readonly Stock[];
  readonly compartments: ProblemCompartment[];
  readonly numbers: Map<string, number>;
  readonly sumps: number[];
};

/** Tanks that one head lists together run together, and count as one compartment. Bags on the machine come after its own. */
function addMachineVessels(gathered: Gathered, machine: Machine): void {
  const { compartments, numbers, sumps, rig, stocks } = gathered;
  const withBags = bagsGoInto(machine);
  for (const group of joinedCompartments(machine)) {
    const tank = group[0]?.kind === 'tank';
    const capacity = group.reduce((sum, each) => sum + (each.kind === 'tank' ? each.capacityGal : each.capacityLb), 0);
    const sump = group.reduce((sum, each) => sum + (each.kind === 'tank' ? each.sumpGal : 0), 0);
    const pours = group.some((each) => each.id === withBags) ? pourMsPerPart(machine, rig, stocks) : null;
    const fill = tank ? flowToMsPerPart(rig.nurseFlowGpm) : bagMsPerPart(rig.minutesPerBag, stocks);
    for (const each of group) numbers.set(`${machine.id}/${each.id}`, compartments.length);
    sumps.push(sump);
    compartments.push({
      id: `${machine.id}/${group.map((each) => each.id).join('+')}`,
      kind: tank ? 'tank' : 'dry',
      capacityParts: capacityParts(capacity - sump),
      // Beside the rig a bag can be poured as quickly as anywhere else.
      fillMsPerPart: pours === null ? fill : Math.min(fill, pours),
      ...sumpOf(sump),
    });
  }
  const into = numbers.get(`${machine.id}/${withBags}`);
  if (into !== undefined && bagPlacesParts(machine, stocks) > 0) {
    compartments.push(bagCompartment(machine, rig, stocks, into));
  }
}

function addHandVessel({ compartments, numbers, sumps, rig, stocks }: Gathered, hand: HandMethod): void {
  const from = hand.drawsFrom;
  if (from.kind === 'machine') return;
  const dry = from.kind === 'own-hopper';
  const sump = dry ? 0 : from.sumpGal;
  numbers.set(hand.id, compartments.length);
  sumps.push(sump);
  compartments.push({
    id: hand.id,
    kind: dry ? 'dry' : 'tank',
    capacityParts: capacityParts(dry ? from.capacityLb : from.capacityGal - sump),
    fillMsPerPart: dry ? bagMsPerPart(rig.minutesPerBag, stocks) : flowToMsPerPart(rig.nurseFlowGpm),
    ...sumpOf(sump),
  });
}

function sumpOf(sumpGal: number): Pick<ProblemCompartment, 'sumpParts'> {
  return sumpGal > 0 ? { sumpParts: demandParts(sumpGal) } : {};
}

/** Where a rig's days start and end; see `ProblemRig`. */
export type RigEnds = Pick<ProblemRig, 'home' | 'end' | 'depot'>;

/**
 * The rig in whole numbers.
 *
 * @param serviceMin minutes of its shift that are kept for something else
 */
export function problemRig(equipped: EquippedRig, prices: Prices, ends: RigEnds, serviceMin: number): ProblemRig {
  const { rig } = equipped;
  const pay = wagePerMs((rig.wagePerHour ?? prices.wagePerHour) * rig.crew);
  const machinesLb = equipped.machines.reduce((sum, each) => sum + each.emptyWeightLb, 0);
  return {
    rigId: rig.id,
    ...ends,
    shiftStartMs: minutesToMs(rig.shiftStartMin),
    shiftMs: minutesToMs(Math.max(0, rig.shiftMin - serviceMin)),
    overtimeMs: minutesToMs(rig.overtimeMin),
    morningMs: minutesToMs(rig.morningMin),
    eveningMs: minutesToMs(rig.eveningMin),
    breakAfterMs: rig.breakMin > 0 ? minutesToMs(rig.breakAfterMin ?? 0) : -1,
    breakMs: minutesToMs(rig.breakMin),
    costPerMs: pay,
    overtimeCostPerMs: overtimePerMs(pay, prices.overtimeFactor),
    costPerM: milesCostPerM(prices.perMile),
    costPerDay: Math.round(prices.perRigDay * NANO_PER_DOLLAR),
    compartments: equipped.compartments,
    nurseParts: capacityParts(rig.nurseTankGal),
    // Bags on a machine that has nothing to pour them into only ride along, and add to what the rig holds.
    bagPlaces: equipped.machines.reduce(
      (sum, each) => sum + (bagsGoInto(each) === '' ? each.bagPlaces : 0),
      rig.bagPlaces,
    ),
    refillMs: minutesToMs(rig.refillMin),
    midZoneMs: minutesToMs(rig.midZoneMin),
    cargoLimit: Math.max(
      0,
      Math.floor((rig.payloadLb - machinesLb) * 10_000) - equipped.sumpParts * WATER_WEIGHT_PER_PART,
    ),
  };
}
