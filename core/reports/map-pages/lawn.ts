import type { Book, Property } from '../../book/index.ts';
import { centreOf } from '../../geometry/index.ts';
import type { PlanStop, PlanTask } from '../../plan/result/index.ts';
import { formatArea, formatBearing, formatNumber, formatWidth } from '../../units/index.ts';
import { type Block, left, type MapArea, type MapLegend, type MapPoint, right } from '../blocks.ts';
import type { DayInput, DayPasses } from '../input.ts';
import { MAP_PAGES } from '../texts/index.ts';
import { clockWord, methodWord, treatmentWord, zoneWord } from '../words.ts';
import { creditNote, picturesUnder } from './pictures.ts';

/** From so many swaths on a map takes a page of its own. */
const SWATHS_OF_A_LARGE_MAP = 45;

/** What one head does at a stop: one map. Work by hand has a map of its own where no head is driven. */
type Part = { readonly by: string; readonly tasks: readonly PlanTask[]; readonly isHand: boolean };

/** A map for every head that is driven at a stop, each with its heading on one page. */
export function lawnBlocks(input: DayInput, stop: PlanStop): readonly Block[] {
  const property = input.book.properties.find((each) => each.id === stop.propertyId);
  if (property === undefined) return [];
  const parts = partsOf(input.book, stop);
  const driven = parts.filter((each) => !each.isHand);
  const byHand = parts.filter((each) => each.isHand);
  const shown = driven.length === 0 ? byHand.slice(0, 1) : driven;
  return shown.map((part, index) => ({
    kind: 'group',
    blocks: [
      { kind: 'heading', text: headingOf(input.book, stop, part) },
      ...partBlocks(input, property, stop, part),
      ...(index === shown.length - 1 ? byHand.map((each) => handNote(input.book, each)) : []),
    ],
  }));
}

function partsOf(book: Book, stop: PlanStop): readonly Part[] {
  const parts = new Map<string, PlanTask[]>();
  for (const task of stop.tasks) {
    const key = JSON.stringify([methodWord(book, task.method), isHand(task)]);
    parts.set(key, [...(parts.get(key) ?? []), task]);
  }
  return [...parts.values()].map((tasks) => {
    const [first] = tasks;
    return { by: first === undefined ? '' : methodWord(book, first.method), tasks, isHand: tasks.every(isHand) };
  });
}

function headingOf(book: Book, { number, name, arriveSec, leaveSec }: PlanStop, { by, isHand }: Part): string {
  const time = MAP_PAGES.times(clockWord(book, arriveSec), clockWord(book, leaveSec));
  return MAP_PAGES.stop(number, name, isHand ? '' : by, time);
}

const isHand = ({ method, handTrim }: PlanTask): boolean => method.kind === 'hand' || handTrim === true;

function partBlocks(input: DayInput, property: Property, stop: PlanStop, part: Part): readonly Block[] {
  const { book, passes } = input;
  const laid = laidFor(passes ?? [], property, part);
  const undrawn = undrawnZones(property, part);
  const pictures = picturesUnder(property, input.pictures ?? []);
  const swaths = Math.max(0, ...laid.map(({ picture }) => picture.swathCount));
  return [
    {
      kind: 'map',
      size: swaths >= SWATHS_OF_A_LARGE_MAP ? 'large' : 'medium',
      legend: legendOf(property, part, laid),
      pictures,
      areas: areasOf(property, part, laid),
      points: pointsOf(book, property, stop),
      route: [],
      passes: laid.map(({ picture }) => ({ legs: picture.legs, overlap: picture.overlap, missed: picture.handTrim })),
      units: book.units,
    },
    ...creditNote(pictures),
    ...(laid.length === 0 ? [] : [zonesTable(book, part, laid)]),
    ...(laid.length > 0 || part.isHand ? [] : [{ kind: 'note' as const, text: whyNoPasses(book, part, passes) }]),
    ...(undrawn.length === 0 ? [] : [{ kind: 'note' as const, text: MAP_PAGES.noOutline(undrawn.join(', ')) }]),
  ];
}

function legendOf(property: Property, part: Part, laid: readonly DayPasses[]): MapLegend {
  const isHatched = areasOf(property, part, laid).some((each) => each.look === 'turf');
  const legs = new Set(laid.flatMap(({ picture }) => picture.legs.map((each) => each.kind)));
  return [
    ...(legs.has('trim') ? ['trim' as const] : []),
    ...(legs.has('swath') ? ['swath' as const] : []),
    ...(legs.has('transit') ? ['transit' as const] : []),
    ...(laid.length > 0 ? ['twice' as const, 'missed' as const] : []),
    ...(isHatched ? ['turf' as const] : []),
    'parking',
  ];
}

function laidFor(passes: readonly DayPasses[], property: Property, { tasks }: Part): readonly DayPasses[] {
  return passes.filter(
    ({ propertyId, zoneId, machineId, headId }) =>
      propertyId === property.id &&
      tasks.some(
        ({ zoneId: id, method }) =>
          id === zoneId && method.kind === 'machine' && method.machineId === machineId && method.headId === headId,
      ),
  );
}

function undrawnZones(property: Property, { tasks }: Part): readonly string[] {
  const ids = new Set(tasks.map((each) => each.zoneId));
  return property.zones.filter(({ id, shape }) => ids.has(id) && shape.kind !== 'drawn').map(({ name }) => name);
}

function whyNoPasses(book: Book, { by, tasks }: Part, passes: DayInput['passes']): string {
  const methods = tasks.flatMap(({ method }) => (method.kind === 'machine' ? [method] : []));
  const isDriven = methods.some(({ machineId, headId }) => {
    const machine = book.machines.find((each) => each.id === machineId);
    return machine?.heads.find((each) => each.id === headId)?.passes !== undefined;
  });
  if (!isDriven) return MAP_PAGES.notDriven(by);
  return passes === undefined ? MAP_PAGES.notLaid : MAP_PAGES.unknown;
}

/** Lot, zones and what is left out. A zone whose passes are drawn, or that is not treated here, has its edge alone. */
function areasOf(property: Property, { tasks }: Part, laid: readonly DayPasses[]): readonly MapArea[] {
  const hatched = new Set(tasks.map((each) => each.zoneId));
  for (const { zoneId } of laid) hatched.delete(zoneId);
  return [
    ...(property.parcel === undefined ? [] : [{ look: 'parcel' as const, geometry: property.parcel }]),
    ...property.zones.flatMap(({ id, shape }) =>
      shape.kind === 'drawn'
        ? [{ look: hatched.has(id) ? ('turf' as const) : ('edge' as const), geometry: shape.geometry }]
        : [],
    ),
    ...property.exclusions.map(({ what, geometry }) => ({
      look: what === 'water' ? ('water' as const) : ('exclusion' as const),
      geometry,
    })),
  ];
}

function pointsOf(book: Book, property: Property, stop: PlanStop): readonly MapPoint[] {
  const drawn = property.zones.flatMap(({ name, shape }): readonly MapPoint[] => {
    const at = shape.kind === 'drawn' ? centreOf(shape.geometry) : null;
    return at === null ? [] : [{ look: 'name', at, label: shortName(name) }];
  });
  const gates = property.gates.flatMap(({ at, clearWidthIn }): readonly MapPoint[] =>
    at === undefined ? [] : [{ look: 'gate', at, label: formatWidth(clearWidthIn, book.units) }],
  );
  return [
    ...(drawn.length > 1 ? drawn : []),
    ...gates,
    { look: 'stop', at: property.parking, label: String(stop.number) },
  ];
}

/** Names on a map are cut where they would cover it; the table below has them whole. */
const LONGEST_NAME = 16;
function shortName(name: string): string {
  const letters = [...name];
  return letters.length > LONGEST_NAME
    ? `${letters
        .slice(0, LONGEST_NAME - 1)
        .join('')
        .trimEnd()}…`
    : name;
}

function zonesTable(book: Book, { tasks }: Part, laid: readonly DayPasses[]): Block {
  const { zones: words } = MAP_PAGES;
  return {
    kind: 'table',
    columns: [
      ...[left(words.zone, 18), left(words.work, 21), right(words.trim, 9), right(words.swaths, 13)],
      ...[left(words.direction, 14), right(words.minutes, 9), right(words.byHand, 16)],
    ],
    rows: laid.map(({ propertyId, zoneId, picture }) => {
      const works = new Set(
        tasks.filter((each) => each.zoneId === zoneId).map(({ treatmentId }) => treatmentWord(book, treatmentId)),
      );
      return [
        zoneWord(book, propertyId, zoneId),
        [...works].join(', '),
        String(picture.trimCount),
        String(picture.swathCount),
        picture.bearingDeg === null ? '' : formatBearing(picture.bearingDeg),
        formatNumber(picture.minutes, 1),
        formatArea(picture.handTrimSqFt, book.units),
      ];
    }),
  };
}

function handNote(book: Book, { by, tasks }: Part): Block {
  const zones = tasks.map(({ propertyId, zoneId, treatmentId, areaSqFt }) => {
    const work = `${zoneWord(book, propertyId, zoneId)} (${treatmentWord(book, treatmentId)})`;
    return `${work} ${formatArea(areaSqFt, book.units)}`;
  });
  return { kind: 'note', text: MAP_PAGES.byHand(by, zones.join(', ')) };
}
