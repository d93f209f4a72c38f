import type { Book, Gate, Property } from '../../book/index.ts';
import type { PlanDay, PlanStop } from '../result/index.ts';

/** Less than this to spare at a gate is tight. inches */
const TIGHT_IN = 2;

/** A visit to a fill point, and what is taken on there. */
export type FillVisit = {
  readonly fillPointId: string;
  readonly name: string;
  readonly startSec: number;
  readonly endSec: number;
  /** Water into the nurse tank and mix into tanks; product into hoppers and bags. */
  readonly volumeGal: number;
  readonly weightLb: number;
  /** Stop that comes next. */
  readonly beforeStop: number;
};

/** A customer to be called before the rig comes (seconds after midnight), and why. */
export type Call = {
  readonly propertyId: string;
  readonly name: string;
  readonly stopNumber: number;
  readonly arriveSec: number;
  readonly why: readonly ('locked' | 'pets' | 'children' | 'hours')[];
};

/** A gate that leaves a machine little room; both widths in inches. */
export type TightGate = {
  readonly propertyId: string;
  readonly name: string;
  readonly stopNumber: number;
  readonly gate: string;
  readonly widthIn: number;
  readonly machine: string;
  readonly machineIn: number;
};

/** What a dispatcher looks through before the trucks leave, for one rig. */
export type Morning = {
  readonly rigId: string;
  readonly rigName: string;
  readonly leaveSec: number;
  readonly homeSec: number;
  readonly carry: PlanDay['carry'];
  readonly carryWeightLb: number;
  readonly payloadLb: number;
  readonly fills: readonly FillVisit[];
  /** Lawns where somebody should be called first, in the order of the day. */
  readonly calls: readonly Call[];
  readonly tightGates: readonly TightGate[];
};

/** The morning of one date, rig by rig. */
export function morningOf(book: Book, days: readonly PlanDay[]): readonly Morning[] {
  const properties = new Map(book.properties.map((each) => [each.id, each]));
  return days.map((day) => {
    const stops = day.stops.flatMap((stop) => {
      const property = properties.get(stop.propertyId);
      return property === undefined ? [] : [{ stop, property }];
    });
    const drives = day.activities.filter((each) => each.kind === 'drive');
    return {
      rigId: day.rigId,
      rigName: day.rigName,
      leaveSec: drives[0]?.startSec ?? day.startSec,
      homeSec: drives.at(-1)?.endSec ?? day.endSec,
      carry: day.carry,
      carryWeightLb: day.carryWeightLb,
      payloadLb: day.payloadLb,
      fills: fillsOf(book, day),
      calls: stops.flatMap(({ stop, property }) => callOf(stop, property)),
      tightGates: stops.flatMap(({ stop, property }) => tightAt(book, stop, property)),
    };
  });
}

function fillsOf(book: Book, day: PlanDay): readonly FillVisit[] {
  return day.activities.flatMap((each): FillVisit[] => {
    if (each.kind !== 'refill' || each.fillPointId === '') return [];
    const taken = [...each.fills, ...each.stock];
    return [
      {
        fillPointId: each.fillPointId,
        name: book.fillPoints.find((point) => point.id === each.fillPointId)?.name ?? each.fillPointId,
        startSec: each.startSec,
        endSec: each.endSec,
        volumeGal: taken.reduce((sum, fill) => sum + fill.volumeGal, 0),
        weightLb: taken.reduce((sum, fill) => sum + fill.weightLb, 0),
        beforeStop: day.stops.find((stop) => stop.leaveSec >= each.startSec)?.number ?? 0,
      },
    ];
  });
}

/** Gates on the way to the zones that are treated there. */
function gatesOf(stop: PlanStop, property: Property): readonly Gate[] {
  const zones = property.zones.filter((zone) => stop.tasks.some((task) => task.zoneId === zone.id));
  const ids = new Set(zones.flatMap((zone) => zone.gateIds));
  return property.gates.filter((gate) => ids.has(gate.id));
}

function callOf(stop: PlanStop, property: Property): readonly Call[] {
  const locked = property.cautions.includes('locked') || gatesOf(stop, property).some((gate) => gate.locked);
  const why: Call['why'] = [
    ...(locked ? (['locked'] as const) : []),
    ...(property.cautions.includes('pets') ? (['pets'] as const) : []),
    ...(property.cautions.includes('children') ? (['children'] as const) : []),
    ...(property.hours === undefined ? [] : (['hours'] as const)),
  ];
  if (why.length === 0) return [];
  return [{ propertyId: property.id, name: stop.name, stopNumber: stop.number, arriveSec: stop.arriveSec, why }];
}

function tightAt(book: Book, stop: PlanStop, property: Property): readonly TightGate[] {
  const found = stop.tasks.flatMap(({ zoneId, method }): TightGate[] => {
    const machine = method.kind === 'machine' ? book.machines.find((each) => each.id === method.machineId) : undefined;
    const zone = property.zones.find((each) => each.id === zoneId);
    if (machine === undefined || zone === undefined) return [];
    return property.gates
      .filter((gate) => zone.gateIds.includes(gate.id) && gate.clearWidthIn - machine.transitWidthIn < TIGHT_IN)
      .map((gate) => ({
        propertyId: property.id,
        name: stop.name,
        stopNumber: stop.number,
        gate: gate.name,
        widthIn: gate.clearWidthIn,
        machine: machine.name,
        machineIn: machine.transitWidthIn,
      }));
  });
  return [...new Map(found.map((each) => [`${each.gate} ${each.machine}`, each])).values()];
}
