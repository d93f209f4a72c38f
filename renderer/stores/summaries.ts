import { hasErrors, type Issue } from '../../core/base/index.ts';
import type { Book, Round } from '../../core/book/index.ts';
import type { PlanDay } from '../../core/plan/result/index.ts';
import { counted, type Formatter } from '../format/index.ts';
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
    { room: 'ground', title: 'Ground', ...ground(input) },
    { room: 'shed', title: 'Shed', ...shed(input) },
    { room: 'round', title: 'Round', ...round(input) },
    { room: 'day', title: 'Day', ...day(input) },
    { room: 'paper', title: 'Paper', result: paper(input), attention: NONE },
  ];
}

type Line = { readonly result: string; readonly attention: Attention };

function ground({ measured, book, words }: SummaryInput): Line {
  const lawns = counted(book.properties.length, 'lawn');
  if (book.properties.length === 0) return { result: 'no lawns yet', attention: NONE };
  const turf =
    measured.done < measured.total
      ? `measuring ${Math.floor((100 * measured.done) / measured.total)} %`
      : `${words.largeArea(measured.treatableSqFt)} turf`;
  return { result: `${lawns} · ${turf}`, attention: { count: measured.attention, stops: false } };
}

function shed({ book, issues }: SummaryInput): Line {
  const kit = issues.filter((each) => each.severity !== 'note' && !each.where.startsWith('property'));
  if (book.machines.length + book.rigs.length === 0) return { result: 'no machines yet', attention: NONE };
  return {
    result: `${counted(book.machines.length, 'machine')} · ${counted(book.rigs.length, 'rig')}`,
    attention: { count: kit.length, stops: hasErrors(kit) },
  };
}

function round({ round: chosen, known, stale, job }: SummaryInput): Line {
  if (job !== null)
    return { result: `planning ${Math.floor((100 * job.done) / Math.max(1, job.total))} %`, attention: NONE };
  if (chosen === null) return { result: 'no round yet', attention: NONE };
  if (known === null) return { result: `${chosen.name} · not planned`, attention: NONE };
  const dates = new Set(known.plan.days.map((each) => each.date)).size;
  const count = known.plan.unplaced.length + (stale ? 1 : 0);
  return {
    result: `${chosen.name} · ${counted(dates, 'day')}`,
    attention: { count, stops: known.plan.unplaced.length > 0 },
  };
}

function day({ day: shown, words }: SummaryInput): Line {
  if (shown === null) return { result: 'no day planned', attention: NONE };
  return {
    result: `${words.date(shown.date)} · ${words.duration(shown.paidSec)}`,
    attention: { count: shown.overtimeSec > 0 ? 1 : 0, stops: false },
  };
}

function paper({ sheets }: SummaryInput): string {
  return sheets === 0 ? 'nothing to print' : `${counted(sheets, 'sheet')} ready`;
}
