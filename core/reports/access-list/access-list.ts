import type { Book, Property } from '../../book/index.ts';
import type { PlanStop } from '../../plan/result/index.ts';
import { type Block, BOX, left, type Sheet, type TableRow } from '../blocks.ts';
import type { DayInput } from '../input.ts';
import { ACCESS_LIST, CAUTION_WORDS } from '../texts/index.ts';
import { clockWord, dateWord } from '../words.ts';

/** The day's stops in order with whom to call, which gates are locked, and what to mind: for the calls of the evening before. */
export function accessList({ book, plan, day }: DayInput): Sheet {
  const rows = day.stops.flatMap((stop) => stopRows(book, stop));
  return {
    id: `access-list ${day.date} ${day.rigId}`,
    title: ACCESS_LIST.title(day.rigName),
    subtitle: dateWord(book, day.date),
    invented: book.invented || plan.invented,
    blocks: [...(rows.length === 0 ? [{ kind: 'note', text: ACCESS_LIST.none } as const] : [tableOf(rows)]), about],
  };
}

const about: Block = { kind: 'note', text: ACCESS_LIST.about };

function tableOf(rows: readonly TableRow[]): Block {
  const { columns } = ACCESS_LIST;
  return {
    kind: 'table',
    columns: [
      left(columns.called),
      left(columns.stop),
      left(columns.arrives),
      left(columns.call),
      left(columns.locked),
      left(columns.mind),
    ],
    rows,
  };
}

function stopRows(book: Book, stop: PlanStop): readonly TableRow[] {
  const property = book.properties.find((each) => each.id === stop.propertyId);
  const lead = [BOX, ACCESS_LIST.stop(stop.number, stop.name), clockWord(book, stop.arriveSec)];
  if (property === undefined) return [{ look: 'stop', lead: [...lead, '', ''], text: '' }];
  const mind = property.cautions.filter((each) => each !== 'locked').map((each) => CAUTION_WORDS[each]);
  const more = [property.address, property.note].filter((each) => each !== '');
  return [
    { look: 'stop', lead: [...lead, callOf(property), lockedOf(property)], text: mind.join(', ') },
    ...more.map((text): TableRow => ({ look: 'detail', lead: [''], text })),
  ];
}

function callOf({ customer }: Property): string {
  return [customer?.name, customer?.phone].filter((each) => each !== undefined && each !== '').join(', ');
}

/** Locked gates by name; a caution says so where no gate is entered. */
function lockedOf({ gates, cautions }: Property): string {
  const locked = gates.filter((each) => each.locked).map((each) => each.name || each.id);
  return locked.length === 0 && cautions.includes('locked') ? CAUTION_WORDS.locked : locked.join(', ');
}
