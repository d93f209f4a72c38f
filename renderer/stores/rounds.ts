import { create } from 'zustand';
import type { Book, Round } from '../../core/book/index.ts';
import { doneWork } from '../../core/plan/live/index.ts';
import type { Plan } from '../../core/plan/result/index.ts';
import { calendarOf, nextWorkday } from '../../core/round/calendar/index.ts';
import { copiedToYear } from '../../core/round/programme/index.ts';
import { todayHere } from '../format/index.ts';
import { commonWords } from '../texts/index.ts';
import { setUpWords } from '../texts/round/index.ts';
import { useBook } from './book.ts';
import { currentRound } from './current.ts';
import { addRound, changeRound, freshId } from './edits.ts';
import { useHost } from './host.ts';
import { showError, showNews } from './notices.ts';
import { type PlanWish, startPlanning, usePlans } from './plans.ts';

/** How the next planning of a round begins. */
export const usePlanWish = create<{
  /** Whether lawns that were promised stay where the plan at hand has them. */
  readonly keepsPromises: boolean;
}>(() => ({ keepsPromises: false }));

/** Why no round can be made yet, or null. */
export function whyNoRound(book: Book): string | null {
  if (book.treatments.length === 0) return setUpWords.edits.needsTreatment;
  return book.rigs.length === 0 ? setUpWords.edits.needsRig : null;
}

/** A round of the first treatment with every rig, on the next working day. */
export function newRound(book: Book, id: string, today: string): Round {
  return {
    id,
    name: setUpWords.edits.newName(book.rounds.length + 1),
    treatmentIds: book.treatments.slice(0, 1).map((treatment) => treatment.id),
    propertyIds: 'all',
    skipped: [],
    dates: [nextWorkday(calendarOf(book), today)],
    rigIds: book.rigs.map((rig) => rig.id),
    wetGround: false,
  };
}

/** Adds a round of the first treatment with every rig, on the next working day, where one can be made. */
export function addNewRound(): void {
  const book = useBook.getState().open?.book;
  if (book === undefined || whyNoRound(book) !== null) return;
  addRound(newRound(book, freshId(book.rounds, 'round'), todayHere()));
}

/** The round that is looked at, laid out for this year, or for the year after its own where it is of this year. */
export function copyRoundToNextYear(): void {
  const book = useBook.getState().open?.book;
  const round = currentRound();
  if (book === undefined || round === null) return;
  const own = Number((round.dates[0] ?? '').slice(0, 4));
  const year = Math.max(own + 1, Number(todayHere().slice(0, 4)));
  const copied = copiedToYear(book, round, year, freshId(book.rounds, 'round'));
  if (copied === null) {
    showError({
      code: 'reference-missing',
      where: round.name,
      detail: setUpWords.rounds.copyNeedsParts,
      hint: setUpWords.rounds.copyNeedsPartsAdvice,
    });
    return;
  }
  addRound(copied.round);
  showNews([setUpWords.rounds.laidOut(copied.round.name), ...copied.notes].join('; '), true);
}

/** The days of a round with one more or one less, in order; null where none would be left. */
export function withDate(round: Round, date: string, on: boolean): readonly string[] | null {
  const rest = round.dates.filter((each) => each !== date);
  const dates = on ? [...rest, date].toSorted() : rest;
  return dates.length === 0 ? null : dates;
}

/** Adds the next working day to the round that is looked at; the day, or null where it was refused. */
export function addNextDay(): string | null {
  const book = useBook.getState().open?.book;
  const round = currentRound();
  if (book === undefined || round === null) return null;
  const date = nextWorkday(calendarOf(book), round.dates.toSorted().at(-1) ?? '');
  const dates = withDate(round, date, true);
  return dates !== null && changeRound(round, { dates }, commonWords.addDay).ok ? date : null;
}

/** Properties that a plan has on the day that they are promised: they stay where they are when it is planned again. */
export function keptPromises({ promised = [] }: Round, plan: Plan): readonly string[] {
  const kept = promised.filter(({ propertyId, on }) =>
    plan.days.some((day) => day.date === on && day.stops.some((stop) => stop.propertyId === propertyId)),
  );
  return kept.map((each) => each.propertyId);
}

/** Plans a round as the settings say, less what was done of it; the wishes stand above the settings. */
export async function planRound(roundId: string, wishes: Partial<Omit<PlanWish, 'roundId'>> = {}): Promise<void> {
  const book = useBook.getState().open?.book;
  if (book === undefined) return;
  const { planSeconds: seconds, planSeed: seed, planEvenUsd: evenUsdPerHour } = useHost.getState().settings;
  await startPlanning({ roundId, seconds, seed, evenUsdPerHour, done: doneWork(book, roundId), ...wishes });
}

/** Plans the round that is looked at; where it is wished, what was promised stays where the plan at hand has it. */
export async function planCurrentRound(): Promise<void> {
  const round = currentRound();
  if (round === null) return;
  const known = usePlans.getState().plans[round.id];
  const keeps = known !== undefined && usePlanWish.getState().keepsPromises;
  await planRound(round.id, keeps ? { pinned: keptPromises(round, known.plan) } : {});
}
