import { hasErrors, type Issue } from '../../core/base/index.ts';
import type { Book, Round } from '../../core/book/index.ts';
import type { PlanDay } from '../../core/plan/result/index.ts';
import type { Formatter } from '../format/index.ts';
import { commonWords } from '../texts/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { roomOfIssue } from './checks.ts';
import type { KnownPlan, RunningJob } from './plans.ts';
import type { Room } from './view.ts';

/** How many things in a room need somebody; `stops` says that one of them keeps work out of plans. */
export type Attention = { readonly count: number; readonly stops: boolean };

/** One step of the pipeline as the header shows it. */
export type RoomSummary = {
  readonly room: Room;
  readonly title: string;
  readonly result: string;
  readonly attention: Attention;
};

export type SummaryInput = {
  readonly book: Book;
  readonly issues: readonly Issue[];
  readonly measured: {
    readonly done: number;
    readonly total: number;
    readonly treatableSqFt: number;
    readonly attention: number;
  };
  readonly round: Round | null;
  readonly known: KnownPlan | null;
  readonly stale: boolean;
  readonly job: RunningJob | null;
  readonly day: PlanDay | null;
  readonly sheets: number;
  readonly words: Formatter;
};

const NONE: Attention = { count: 0, stops: false };

/** The five rooms with their live results. */
export function roomSummaries(input: SummaryInput): readonly RoomSummary[] {
  return [
    { room: 'ground', title: commonWords.rooms.ground, ...ground(input) },
    { room: 'shed', title: commonWords.rooms.shed, ...shed(input) },
    { room: 'round', title: commonWords.rooms.round, ...round(input) },
    { room: 'day', title: commonWords.rooms.day, ...day(input) },
    { room: 'paper', title: commonWords.rooms.paper, result: paper(input), attention: NONE },
  ];
}

type Line = { readonly result: string; readonly attention: Attention };

/** Issues of the checks that belong to a room, without mere notes. */
function toCheck(issues: readonly Issue[], room: Room): Attention {
  const found = issues.filter((each) => each.severity !== 'note' && roomOfIssue(each) === room);
  return { count: found.length, stops: hasErrors(found) };
}

function ground({ measured, book, issues, words }: SummaryInput): Line {
  const lawns = commonWords.lawns(book.properties.length);
  if (book.properties.length === 0) return { result: storesWords.summaries.noLawnsYet, attention: NONE };
  const turf =
    measured.done < measured.total
      ? storesWords.summaries.measuring(Math.floor((100 * measured.done) / measured.total))
      : storesWords.summaries.turf(words.largeArea(measured.treatableSqFt));
  const checks = toCheck(issues, 'ground');
  return { result: `${lawns} · ${turf}`, attention: { ...checks, count: checks.count + measured.attention } };
}

function shed({ book, issues }: SummaryInput): Line {
  if (book.machines.length + book.rigs.length === 0)
    return { result: storesWords.summaries.noMachinesYet, attention: NONE };
  return {
    result: `${storesWords.summaries.machines(book.machines.length)} · ${storesWords.summaries.rigs(book.rigs.length)}`,
    attention: toCheck(issues, 'shed'),
  };
}

function round({ round: chosen, issues, known, stale, job }: SummaryInput): Line {
  if (job !== null)
    return {
      result: storesWords.summaries.planning(Math.floor((100 * job.done) / Math.max(1, job.total))),
      attention: NONE,
    };
  if (chosen === null) return { result: storesWords.summaries.noRoundYet, attention: NONE };
  const checks = toCheck(issues, 'round');
  if (known === null) return { result: storesWords.summaries.notPlanned(chosen.name), attention: checks };
  const dates = new Set(known.plan.days.map((each) => each.date)).size;
  const unplaced = known.plan.unplaced.length;
  return {
    result: `${commonWords.days(dates)} · ${chosen.name}`,
    attention: { count: checks.count + unplaced + (stale ? 1 : 0), stops: checks.stops || unplaced > 0 },
  };
}

function day({ day: shown, words }: SummaryInput): Line {
  if (shown === null) return { result: storesWords.summaries.noDayPlanned, attention: NONE };
  return {
    result: `${words.date(shown.date)} · ${words.duration(shown.paidSec)}`,
    attention: { count: shown.overtimeSec > 0 ? 1 : 0, stops: false },
  };
}

function paper({ sheets }: SummaryInput): string {
  return sheets === 0 ? storesWords.summaries.nothingToPrint : storesWords.summaries.ready(sheets);
}
