import { PLAN_WRITERS, type PlanSource } from '../../../../../core/formats/index.ts';
import { type Plan, writePlan } from '../../../../../core/plan/result/index.ts';
import { sampleBook } from '../../../../support/samples.ts';
import { storedPlan } from '../../../../support/stored-plans.ts';
import { smallPlan } from '../../../plan/judge/small-plan.ts';
import { fixtureBook, fixturePlan } from '../../../reports/fixture.ts';

/** 2026-11-27 10:30:05 UTC. */
export const NOW_MS = Date.UTC(2026, 10, 27, 10, 30, 5);

/** The judge's hand-made day with the products of its loads; `names` puts any text into the names of the book. */
export function smallSource(names: (text: string) => string = (text) => text): PlanSource {
  const book = fixtureBook(names);
  const [day] = smallPlan().days;
  const [{ loads } = { loads: [] }] = fixturePlan().days;
  if (day === undefined) throw new Error('the hand-made plan has lost its day');
  const stops = day.stops.map((stop) => ({ ...stop, name: names(stop.name) }));
  const plan: Plan = { ...smallPlan(), days: [{ ...day, rigName: names(day.rigName), stops, loads }] };
  return { book, plan, days: plan.days };
}

/** A planned sample with two rigs. */
export function sampleSource(): PlanSource {
  const plan = storedPlan('mixed-day');
  return { book: sampleBook('mixed-day'), plan, days: plan.days };
}

export function written(id: string, source: PlanSource, title = 'Book: round'): string {
  const writer = PLAN_WRITERS.find((each) => each.id === id);
  if (writer === undefined) throw new Error(`no writer ${id}`);
  return writer.write(source, { title, nowMs: NOW_MS, planText: writePlan });
}

/** Texts that have broken files before: markup, signs of the formats, right to left, beyond the basic plane, control characters. */
export const ODD_NAMES: readonly string[] = [
  '<b>Elm</b> & "Oak" \'x\'',
  'a;b,c\\d\\n:e',
  'שלום עולם — مرحبا',
  '🌱👩‍🌾 Gärtnerei Ñandú 草坪',
  `a\u0000b\u001bc\u007f\r\nd\u2028e\u0085f\tg${'\ud800'}h`,
  ']]> <!-- %20 &amp;',
  '=HYPERLINK("x")',
  'Ä'.repeat(180),
];

/** The text in every name, with what it is the name of behind it; addresses are 300 characters long. */
export const named =
  (name: string) =>
  (what: string): string =>
    what.endsWith('Lane') ? `${name} ${what}`.padEnd(300, ' long') : `${name} ${what}`;
