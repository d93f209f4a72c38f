import { ok } from '../../../core/base/index.ts';
import { type Plan, plannedDays } from '../../../core/plan/result/index.ts';
import type { PlanBase } from '../jobs/index.ts';
import type { Context, HandlersOf } from './context.ts';

export function planHandlers(
  context: Context,
): HandlersOf<
  'plan.read' | 'plan.fits' | 'plan.store' | 'passes.reckon' | 'passes.draw' | 'job.startPlan' | 'job.cancel'
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
    'passes.draw': async ({ session, ...asked }, client) => {
      const found = library.find(session, client.id);
      return found.ok ? jobs.draw(found.value, asked) : found;
    },
    'job.startPlan': async (
      { session, roundId, seed, seconds, iterations, dates, today, evenUsdPerHour, keep, rest },
      client,
    ) => {
      const found = library.find(session, client.id);
      if (!found.ok) return found;
      const limit = seconds === undefined && iterations === undefined ? (await settings.read()).planSeconds : seconds;
      // Beside the plan of a round there may be one of the rest of a day.
      const plans = found.value.entry.plans().filter((each) => each.roundId === each.plan.roundId);
      const kept = plans.find((plan) => plan.roundId === roundId);
      const base = keep === undefined || kept === undefined ? null : baseOf(kept.plan, keep);
      const jobId = jobs.startPlan(found.value, client, {
        roundId,
        seed,
        seconds: limit ?? null,
        iterations: iterations ?? null,
        dates: dates ?? null,
        ...(today === undefined ? {} : { today }),
        plannedDays: plannedDays(plans.map((each) => each.plan)),
        evenUsdPerHour: evenUsdPerHour ?? 0,
        base,
        ...(rest === undefined ? {} : { rest }),
      });
      return ok({ jobId });
    },
    'job.cancel': async ({ jobId }, client) => jobs.cancel(jobId, client),
  };
}

function baseOf(plan: Plan, keep: { readonly first: number; readonly pinned: PlanBase['pinned'] }): PlanBase {
  return { plan, keepFirst: keep.first, pinned: keep.pinned };
}
