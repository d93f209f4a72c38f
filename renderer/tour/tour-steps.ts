import type { Book, Machine, Property, Round } from '../../core/book/index.ts';
import type { PropertyMeasure } from '../../core/measure/index.ts';
import type { Plan, PlanDay, PlanStop } from '../../core/plan/result/index.ts';
import type { Formatter } from '../format/index.ts';
import { type MidLawnRefill, midLawnRefill, type Room } from '../stores/index.ts';
import { tourWords } from '../texts/index.ts';

/** What a step of the tour selects before it points. */
export type TourTarget = {
  readonly view?: string;
  readonly machineId?: string;
  readonly day?: PlanDay;
  readonly stop?: PlanStop;
  readonly sec?: number;
  readonly propertyId?: string;
};

/** One step: a room, what it is about, and where on the screen that is. */
export type TourStep = {
  readonly id: 'lawn' | 'machine' | 'plan' | 'refill' | 'fit' | 'paper';
  readonly room: Room;
  readonly title: string;
  readonly says: string;
  /** Selectors of what is pointed at; the first that is on the screen is taken, and none may be. */
  readonly anchors: readonly string[];
  /** What is to stay in sight where that is more than what is pointed at. */
  readonly keepsClear?: string;
  readonly target: TourTarget;
};

export type TourSource = {
  readonly book: Book;
  readonly round: Round;
  readonly plan: Plan;
  readonly measureOf: (property: Property) => PropertyMeasure;
  readonly words: Formatter;
};

/** The steps of the tour through a planned book, each about something that is in it. */
export function tourSteps(source: TourSource): readonly TourStep[] {
  const found = midLawnRefill(source.plan);
  return [
    lawnStep(source, found),
    machineStep(source, found),
    planStep(source),
    refillStep(source, found),
    fitStep(source),
    paperStep(source),
  ];
}

function lawnStep({ book, measureOf, words }: TourSource, found: MidLawnRefill | null): TourStep {
  const property = book.properties.find((each) => each.id === found?.stop.propertyId) ?? book.properties[0];
  const area = property === undefined ? null : measureOf(property).treatableSqFt;
  return {
    id: 'lawn',
    room: 'ground',
    title: tourWords.lawn.title,
    says:
      property === undefined || area === null
        ? tourWords.lawn.any
        : tourWords.lawn.says(property.name, words.area(area)),
    anchors: ['.list-item[aria-selected="true"]', '.panel-left'],
    target: property === undefined ? {} : { propertyId: property.id },
  };
}

function machineStep({ book, words }: TourSource, found: MidLawnRefill | null): TourStep {
  const methods = found?.stop.tasks.map((task) => task.method) ?? [];
  const used = methods.flatMap((method) => (method.kind === 'machine' ? [method.machineId] : []));
  const machine = book.machines.find((each) => used.includes(each.id)) ?? book.machines[0];
  return {
    id: 'machine',
    room: 'shed',
    title: tourWords.machine.title,
    says:
      machine === undefined
        ? tourWords.machine.any
        : tourWords.machine.says(machine.name, words.width(machine.transitWidthIn), holds(machine, words)),
    anchors: ['.row-selected', '.table-edit', '.panel-left'],
    keepsClear: '.shelf',
    target: machine === undefined ? {} : { machineId: machine.id },
  };
}

/** "26.0 gal in the left tank, 220 lb in the hopper" */
function holds({ compartments }: Machine, words: Formatter): string {
  const each = compartments.map((compartment) =>
    compartment.kind === 'tank'
      ? tourWords.machine.holds(words.volume(compartment.capacityGal), compartment.name)
      : tourWords.machine.holds(words.weight(compartment.capacityLb), compartment.name),
  );
  return each.join(', ');
}

function planStep({ plan, round, words }: TourSource): TourStep {
  const { stops, refills, paidSec } = plan.totals;
  return {
    id: 'plan',
    room: 'round',
    title: tourWords.plan.title,
    says: tourWords.plan.says(round.name, stops, refills, words.duration(paidSec)),
    anchors: ['.figures-wide', '.plan-bar'],
    target: { view: 'plan' },
  };
}

function refillStep({ plan, words }: TourSource, found: MidLawnRefill | null): TourStep {
  const at = { id: 'refill', room: 'day', title: tourWords.refill.title, keepsClear: '.panel-bottom' } as const;
  const anchors = ['.ribbon .cursor-time', '.ribbon', '.panel-bottom'];
  const [day] = plan.days;
  if (found === null)
    return {
      ...at,
      says: tourWords.refill.any,
      anchors,
      target: { view: 'levels', ...(day === undefined ? {} : { day }) },
    };
  const { refill, stop } = found;
  return {
    ...at,
    says: tourWords.refill.says(words.clock(refill.startSec), found.day.rigName, stop.name, words.said(refill.reason)),
    anchors,
    target: { view: 'levels', day: found.day, stop, sec: refill.startSec },
  };
}

function fitStep(source: TourSource): TourStep {
  const found = tooNarrow(source);
  const { words } = source;
  return {
    id: 'fit',
    room: 'day',
    title: tourWords.fit.title,
    says:
      found === null
        ? tourWords.fit.any
        : tourWords.fit.says(
            `${found.gate.name} of ${found.stop.name}`,
            words.width(found.gate.clearWidthIn),
            found.machine.name,
            words.width(found.machine.transitWidthIn),
          ),
    anchors: ['.fit-table', '.panel-right'],
    target: found === null ? { view: 'levels' } : { view: 'levels', day: found.day, stop: found.stop },
  };
}

type TooNarrow = {
  readonly day: PlanDay;
  readonly stop: PlanStop;
  readonly gate: Property['gates'][number];
  readonly machine: Machine;
};

/** A stop of the plan with a gate on the way to a zone that some machine of the book is too wide for, or null. */
function tooNarrow({ book, plan }: TourSource): TooNarrow | null {
  for (const day of plan.days) {
    for (const stop of day.stops) {
      const property = book.properties.find((each) => each.id === stop.propertyId);
      const used = new Set(property?.zones.flatMap((zone) => zone.gateIds));
      const gate = property?.gates.find((each) => used.has(each.id));
      const machine = book.machines.find((each) => gate !== undefined && each.transitWidthIn > gate.clearWidthIn);
      if (gate !== undefined && machine !== undefined) return { day, stop, gate, machine };
    }
  }
  return null;
}

function paperStep({ plan, words }: TourSource): TourStep {
  const [day] = plan.days;
  return {
    id: 'paper',
    room: 'paper',
    title: tourWords.paper.title,
    says: day === undefined ? tourWords.paper.any : tourWords.paper.says(day.rigName, words.longDate(day.date)),
    anchors: ['.paper-tools', '.panel-left'],
    target: day === undefined ? {} : { day },
  };
}
