import type { Book } from '../../book/index.ts';
import type { PlanActivity, PlanFill, PlanLoad, PlanStockFill } from '../../plan/result/index.ts';
import { formatVolume } from '../../units/index.ts';
import { type Block, BOX, left, right, type TableRow } from '../blocks.ts';
import { loadsOfFills } from '../fills.ts';
import type { DayInput } from '../input.ts';
import { TRUCK_LIST } from '../texts/index.ts';
import { clockWord, compartmentWord, loadWord, materialWord, placeWord, stockWord } from '../words.ts';

/** A time at which the rig takes something on from outside: in the morning, and at fill points. */
type Filling = {
  readonly startSec: number;
  readonly place: string;
  readonly stock: readonly PlanStockFill[];
  readonly loads: readonly PlanLoad[];
  readonly next: string;
};

type LoadsOf = (fills: readonly PlanFill[]) => readonly PlanLoad[];

/** Where, when and how much the rig fills up, the morning first. */
export function fillPlan({ book, day }: DayInput): readonly Block[] {
  const words = TRUCK_LIST.fillPoints;
  const home = book.rigs.find((each) => each.id === day.rigId)?.homeId;
  const yard = home === undefined ? words.yard : placeWord(book, home);
  const loads = loadsOfFills(day);
  const loadsOf: LoadsOf = (fills) => fills.flatMap((fill) => loads.get(fill) ?? []);
  const fillings = day.activities.flatMap((each) => fillingOf(book, loadsOf, each, yard));
  const onTheWay = fillings.length > 1 ? [] : [{ kind: 'note' as const, text: words.onlyStart }];
  if (fillings.length === 0) return onTheWay;
  const allGal = fillings.reduce((sum, each) => sum + volumeGal(each), 0);
  const table: Block = {
    kind: 'table',
    columns: [
      left('', 5),
      right(words.time, 11),
      left(words.place, 18),
      left(words.take, 37),
      right(words.volume, 13),
      left(words.next, 16),
    ],
    rows: [
      ...fillings.map((each) => fillingRow(book, each)),
      { look: 'sum', lead: ['', '', words.together], text: '', tail: [formatVolume(allGal, book.units), ''] },
    ],
  };
  return [{ kind: 'group', blocks: [{ kind: 'heading', text: words.title }, table, ...onTheWay] }];
}

function fillingOf(book: Book, loadsOf: LoadsOf, activity: PlanActivity, yard: string): readonly Filling[] {
  if (activity.kind === 'morning') {
    return [{ ...activity, loads: loadsOf(activity.fills), place: yard, next: TRUCK_LIST.fillPoints.start }];
  }
  if (activity.kind !== 'refill' || activity.fillPointId === '') return [];
  const [place, next] = [placeWord(book, activity.fillPointId), placeWord(book, activity.propertyId)];
  return [{ ...activity, loads: loadsOf(activity.fills), place, next }];
}

function fillingRow(book: Book, filling: Filling): TableRow {
  const { into } = TRUCK_LIST.fillPoints;
  const taken = [
    ...filling.stock.map((fill) => stockWord(book, fill)),
    ...filling.loads.map((load) =>
      into(
        `${loadWord(load, book.units)} ${materialWord(book, load.materialId)}`,
        compartmentWord(book, load.compartmentId),
      ),
    ),
  ];
  const gallons = volumeGal(filling);
  return [
    BOX,
    clockWord(book, filling.startSec),
    filling.place,
    taken.join('; '),
    gallons > 0 ? formatVolume(gallons, book.units) : '',
    filling.next,
  ];
}

function volumeGal({ stock, loads }: Filling): number {
  const stockGal = stock.reduce((sum, each) => sum + each.volumeGal, 0);
  return loads.reduce((sum, each) => sum + each.volumeGal + each.sumpGal, stockGal);
}
