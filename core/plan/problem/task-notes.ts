import { type Issue, issue } from '../../base/index.ts';
import type { Option, TaskFacts } from './options.ts';

export function labelDaysNote({ property, zone }: TaskFacts, words: string): Issue {
  return issue('note', 'label-days', `property ${property.name}, zone ${zone.name}`, `${words}.`);
}

export function tightNote({ property, zone }: TaskFacts): Issue {
  const where = `property ${property.name}, zone ${zone.name}`;
  return issue('note', 'gate-tight', where, 'Every machine that fits has less than 2 in to spare at the gate.');
}

export function scantWarning({ property, zone, demand }: TaskFacts): Issue {
  const where = `property ${property.name}, zone ${zone.name}`;
  const words = `It takes ${demand.volumeGal.toFixed(2)} gal, less than the hand method needs to work evenly. Treat it together with other ground or with another method.`;
  return issue('warning', 'below-least-volume', where, words);
}

export function leftWarning({ property, zone }: TaskFacts, options: readonly Option[]): Issue {
  const least = Math.min(...options.map((each) => each.untrimmedUnits));
  const where = `property ${property.name}, zone ${zone.name}`;
  const words = `At least ${least} ft² are not reached by any machine, and no rig that does the zone has a hand method that may treat them. They stay untreated.`;
  return issue('warning', 'ground-not-reached', where, words);
}
