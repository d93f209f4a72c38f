import type { Book } from '../../book/index.ts';
import { fromParts, sumProducts } from './amounts.ts';
import { clean } from './loads.ts';
import type { Names } from './names.ts';
import type { RouteView } from './route.ts';
import type { LevelLine, PlanActivity, PlanDay, PlanLoad } from './types.ts';

type Carry = PlanDay['carry'][number];
type Morning = Extract<PlanActivity, { readonly kind: 'morning' }>;

const POUNDS_PER_GALLON = 8.34;
const OUNCES_PER_POUND = 16;
const FLUID_OUNCES_PER_GALLON = 128;

/**
 * What the truck carries when it leaves in the morning: machines, water, mixes, bags, and product for the later fills. Bags
 * weigh what full bags weigh, since the truck carries whole ones. The search counts the exact pounds that it needs out of
 * them, so the whole bags of a tight day may come to more than the payload; the truck list then says so.
 */
export function carryOf(
  book: Book,
  view: RouteView,
  names: Names,
  activities: readonly PlanActivity[],
  loads: readonly PlanLoad[],
): readonly Carry[] {
  const morning = activities.find((each): each is Morning => each.kind === 'morning');
  return [
    ...machinesCarried(book, view),
    ...stockCarried(names, morning),
    ...mixesCarried(view, names, morning),
    ...productsCarried(names, loads, morning),
  ];
}

function machinesCarried(book: Book, view: RouteView): readonly Carry[] {
  const carried = book.rigs.find((each) => each.id === view.rig.rigId)?.machines ?? [];
  return carried.flatMap((each) => {
    const machine = book.machines.find((other) => other.id === each.machineId);
    if (machine === undefined) return [];
    const label = `${machine.name}, on the ${each.ride}`;
    return [
      { what: 'machine' as const, id: machine.id, label, amount: 1, unit: 'machine', weightLb: machine.emptyWeightLb },
    ];
  });
}

function stockCarried(names: Names, morning: Morning | undefined): readonly Carry[] {
  return (morning?.stock ?? []).map((fill) =>
    fill.stock === 'water'
      ? {
          what: 'water' as const,
          id: 'water',
          label: 'Water in the nurse tank',
          amount: fill.volumeGal,
          unit: 'gal',
          weightLb: fill.volumeGal * POUNDS_PER_GALLON,
        }
      : {
          what: 'bags' as const,
          id: fill.productId,
          label: names.material(fill.productId),
          amount: fill.bags,
          unit: 'bags',
          weightLb: fill.bags * names.bagLb(fill.productId),
        },
  );
}

function mixesCarried(view: RouteView, names: Names, morning: Morning | undefined): readonly Carry[] {
  return (morning?.fills ?? []).map((fill) => {
    const tank = fill.volumeGal > 0;
    if (view.rig.compartments.find((each) => each.id === fill.compartmentId)?.pours !== undefined) {
      const bagLb = names.bagLb(fill.materialId);
      const bags = bagLb > 0 ? Math.ceil(fill.weightLb / bagLb - 1e-9) : 1;
      const label = `${names.material(fill.materialId)} on ${names.compartment(fill.compartmentId)}`;
      return { what: 'bags' as const, id: fill.materialId, label, amount: bags, unit: 'bags', weightLb: bags * bagLb };
    }
    const sump = view.rig.compartments.find((each) => each.id === fill.compartmentId)?.sumpParts ?? 0;
    const amount = tank ? fill.volumeGal + fromParts(sump) : fill.weightLb;
    return {
      what: 'mix' as const,
      id: fill.materialId,
      label: `${names.material(fill.materialId)} in ${names.compartment(fill.compartmentId)}`,
      amount,
      unit: tank ? 'gal' : 'lb',
      weightLb: tank ? amount * POUNDS_PER_GALLON : amount,
    };
  });
}

/** The products of a load, with those of what goes below the reach of the pump. */
function withSump({ products, volumeGal, sumpGal }: PlanLoad): PlanLoad['products'] {
  const share = volumeGal > 0 ? 1 + sumpGal / volumeGal : 1;
  return products.map((each) => ({ ...each, amount: each.amount * share }));
}

/** Product that goes into tanks after the start. Fluid ounces are weighed as water, since a book holds no densities. */
function productsCarried(names: Names, loads: readonly PlanLoad[], morning: Morning | undefined): readonly Carry[] {
  const later = loads.filter((each) => each.kind === 'tank' && each.startSec > (morning?.startSec ?? -1));
  return sumProducts(later.map(withSump)).map((each) => {
    const weightLb =
      each.unit === 'lb'
        ? each.amount
        : each.unit === 'oz'
          ? each.amount / OUNCES_PER_POUND
          : (each.amount / FLUID_OUNCES_PER_GALLON) * POUNDS_PER_GALLON;
    return {
      what: 'product' as const,
      id: each.productId,
      label: `${names.material(each.productId)}, for later fills`,
      amount: each.amount,
      unit: each.unit,
      weightLb,
    };
  });
}

/** What is left in each compartment at the end of the day, and what to do with it. */
export function leftOverOf(
  levels: readonly LevelLine[],
  activities: readonly PlanActivity[],
  names: Names,
): PlanDay['leftOver'] {
  const held = new Map<string, string>();
  for (const each of activities) {
    if (each.kind === 'morning' || each.kind === 'refill' || each.kind === 'pour')
      for (const fill of each.fills) held.set(fill.compartmentId, fill.materialId);
  }
  return levels.flatMap((line) => {
    const left = clean(line.points.at(-1)?.[1] ?? 0);
    if ((line.kind !== 'tank' && line.kind !== 'dry') || left <= 0) return [];
    const materialId = held.get(line.id) ?? '';
    const advice =
      line.kind === 'tank'
        ? `Use ${names.material(materialId)} up on ground that its label names, never above the label rate; do not leave it in the tank.`
        : `Empty ${names.material(materialId)} back into its own bag and close it.`;
    const [volumeGal, weightLb] = line.kind === 'tank' ? [left, 0] : [0, left];
    return [{ compartmentId: line.id, materialId, volumeGal, weightLb, advice }];
  });
}
