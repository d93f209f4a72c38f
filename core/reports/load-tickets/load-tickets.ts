import type { Book, Mix } from '../../book/index.ts';
import type { PlanDay, PlanLoad } from '../../plan/result/index.ts';
import { formatArea, formatRate } from '../../units/index.ts';
import type { Block, Fact, Sheet } from '../blocks.ts';
import type { DayInput } from '../input.ts';
import { CAUTIONS, LOAD_TICKETS, MIXING } from '../texts/index.ts';
import {
  amountWord,
  clockWord,
  compartmentWord,
  dateWord,
  materialWord,
  placeWord,
  saidWord,
  zoneWord,
} from '../words.ts';
import { contents } from './contents.ts';
import { dryRate } from './dry-rate.ts';
import { labels } from './labels.ts';
import { agitationWord, mixingOrder } from './mixing-order.ts';
import { overview, whereWord } from './overview.ts';
import { putOut } from './put-out.ts';

/** More than rounding. */
const OVERLAP_WORTH_SAYING = 1.01;

/**
 * All loads on the first page, and then a page for each that can be handed over: what goes in, in which order, with which
 * calibration, which ground it must cover, what to do with what is left.
 */
export function loadTickets({ book, plan, day }: DayInput): Sheet {
  return {
    id: `load-tickets ${day.date} ${day.rigId}`,
    title: LOAD_TICKETS.title(day.rigName),
    subtitle: dateWord(book, day.date),
    invented: book.invented || plan.invented,
    blocks: [...overview(book, day), ...day.loads.map((load) => ticket(book, day, load))],
  };
}

function ticket(book: Book, day: PlanDay, load: PlanLoad): Block {
  const mix = book.mixes.find((each) => each.id === load.materialId);
  const order: readonly Block[] =
    mix === undefined ? [] : [{ kind: 'subheading', text: MIXING.title }, mixingOrder(book, load, mix)];
  return {
    kind: 'page',
    blocks: [
      {
        kind: 'heading',
        text: LOAD_TICKETS.ticket(load.number, day.loads.length, materialWord(book, load.materialId)),
      },
      { kind: 'facts', facts: facts(book, load, mix) },
      { kind: 'facts', facts: work(book, day, load, mix), wide: true },
      contents(book, load, mix),
      ...order,
      { kind: 'subheading', text: LOAD_TICKETS.covers },
      { kind: 'facts', facts: covers(book, load) },
      { kind: 'note', text: leftWords(book, day, load) },
      ...labels(
        book,
        load.products.map((each) => each.productId),
      ),
      { kind: 'note', text: CAUTIONS.short },
      { kind: 'blanks', labels: LOAD_TICKETS.blanks },
    ],
  };
}

function facts(book: Book, load: PlanLoad, mix: Mix | undefined): readonly Fact[] {
  const words = LOAD_TICKETS.facts;
  const rate =
    mix === undefined ? [] : [{ label: words.carrier, value: formatRate(mix.carrierGalPer1000SqFt, book.units) }];
  return [
    { label: words.into, value: compartmentWord(book, load.compartmentId) },
    { label: words.fillAt, value: LOAD_TICKETS.atTime(clockWord(book, load.startSec), whereWord(book, load)) },
    { label: words.covers, value: formatArea(load.coversSqFt, book.units) },
    ...rate,
    ...overlap(book, load, mix),
  ];
}

/** Ground that the load goes over at its rate, where that is more than what is treated: strips that are gone over twice. */
function overlap(book: Book, load: PlanLoad, mix: Mix | undefined): readonly Fact[] {
  const dry = dryRate(book, load);
  const used =
    mix === undefined ? load.beforeLb + load.weightLb - load.leftLb : load.beforeGal + load.volumeGal - load.leftGal;
  const rate = mix === undefined ? (dry ?? 0) : mix.carrierGalPer1000SqFt;
  const coveredSqFt = rate > 0 ? (used / rate) * 1000 : 0;
  if (coveredSqFt < load.coversSqFt * OVERLAP_WORTH_SAYING) return [];
  return [{ label: LOAD_TICKETS.facts.withOverlap, value: formatArea(coveredSqFt, book.units) }];
}

function work(book: Book, day: PlanDay, load: PlanLoad, mix: Mix | undefined): readonly Fact[] {
  const { agitation } = LOAD_TICKETS.facts;
  const stirred = mix === undefined ? [] : [{ label: agitation, value: agitationWord(book, load, mix) }];
  return [...stirred, ...putOut(book, day, load)];
}

/** One line per property; a zone that is not begun here says from where on. */
function covers(book: Book, load: PlanLoad): readonly Fact[] {
  const properties = [...new Set(load.covers.map((each) => each.propertyId))];
  return properties.map((id) => {
    const here = load.covers.filter((each) => each.propertyId === id);
    const zones = here.map((each) => {
      const zone = zoneWord(book, id, each.zoneId);
      return each.fromSqFt > 0 ? LOAD_TICKETS.zoneFrom(zone, formatArea(each.fromSqFt, book.units)) : zone;
    });
    const area = here.reduce((sum, each) => sum + each.areaSqFt, 0);
    return {
      label: placeWord(book, id),
      value: LOAD_TICKETS.onZones([...new Set(zones)], formatArea(area, book.units)),
    };
  });
}

function leftWords(book: Book, day: PlanDay, load: PlanLoad): string {
  const left = load.kind === 'tank' ? load.leftGal : load.leftLb;
  if (left <= 0) return LOAD_TICKETS.left(saidWord(book, load.why));
  const amount = amountWord({ volumeGal: load.leftGal, weightLb: load.leftLb }, book.units);
  const next = day.loads.find((each) => each.number > load.number && each.compartmentId === load.compartmentId);
  if (next !== undefined && next.materialId === load.materialId) return LOAD_TICKETS.leftForNext(amount, next.number);
  const advice = day.leftOver.find((each) => each.compartmentId === load.compartmentId)?.advice ?? '';
  return LOAD_TICKETS.leftOver(amount, advice);
}
