import { ok } from '../../../core/base/index.ts';
import { restName } from '../../../core/plan/live/index.ts';
import { type Plan, plannedDays } from '../../../core/plan/result/index.ts';
import type { PlanBase } from '../jobs/index.ts';
import type { Context, HandlersOf } from './context.ts';

export function planHandlers(
  context: Context,
): HandlersOf<
  | 'plan.read'
  | 'plan.fits'
  | 'plan.store'
  | 'passes.reckon'
  | 'passes.draw'
  | 'board.ask'
  | 'board.keep'
  | 'fit.read'
  | 'job.startPlan'
  | 'job.cancel'
> {
  const { library, jobs, settings, now } = context;
  return {
    'plan.read': async ({ session, roundId }, client) => {
      const found = library.find(session, client.id);
      if (!found.ok) return found;
      return ok(found.value.entry.plans().find((plan) => plan.roundId === roundId) ?? null);
    },
    'plan.fits': async ({ session, ...asked }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? jobs.fits(found.value, asked) : found;
    },
    'plan.store': async ({ session, roundId, plan }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? found.value.entry.keepPlan({ roundId, savedAt: now().toISOString(), plan }) : found;
    },
    'passes.reckon': async ({ session, propertyId }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? jobs.reckonPasses(found.value, propertyId) : found;
    },
    'passes.draw': async ({ session, wanted }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? jobs.draw(found.value, wanted) : found;
    },
    'board.ask': async ({ session, ...asked }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? jobs.boards.ask(found.value, asked) : found;
    },
    'board.keep': async ({ session, roundId, stamp }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? jobs.boards.keep(found.value, roundId, stamp) : found;
    },
    'fit.read': async ({ session, roundId, treatmentId }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? jobs.whoCanGo(found.value, roundId, treatmentId) : found;
    },
    'job.startPlan': async ({ session, roundId, seed, seconds, iterations, dates, keep, ...wish }, client) => {
      const found = library.find(session, client.id);
      if (!found.ok) return found;
      // What was moved last may still be on its way to the disk.
      await jobs.boards.settled(found.value);
      const limit = seconds === undefined && iterations === undefined ? (await settings.read()).planSeconds : seconds;
      // Beside the plan of a round there may be one of the rest of a day.
      const all = found.value.entry.plans();
      const plans = all.filter((each) => each.roundId === each.plan.roundId);
      const name = wish.rest === undefined ? roundId : restName(roundId, wish.rest.date);
      const kept = all.find((plan) => plan.roundId === name);
      const base = keep === undefined || kept === undefined ? null : baseOf(kept.plan, keep);
      const jobId = jobs.startPlan(found.value, client, {
        roundId,
        seed,
        seconds: limit ?? null,
        iterations: iterations ?? null,
        dates: dates ?? null,
        ...(wish.today === undefined ? {} : { today: wish.today }),
        plannedDays: plannedDays(plans.map((each) => each.plan)),
        evenUsdPerHour: wish.evenUsdPerHour ?? 0,
        outages: wish.outages ?? [],
        done: wish.done ?? [],
        base,
        ...(wish.rest === undefined ? {} : { rest: wish.rest }),
        ...(wish.fleetId === undefined ? {} : { fleetId: wish.fleetId }),
      });
      return ok({ jobId });
    },
    'job.cancel': async ({ jobId }, client) => jobs.cancel(jobId, client),
  };
}

function baseOf(plan: Plan, keep: { readonly first: number; readonly pinned: PlanBase['pinned'] }): PlanBase {
  return { plan, keepFirst: keep.first, pinned: keep.pinned };
}
