import * as v from 'valibot';
import { err, ok, type Result } from '../../base/index.ts';
import { PLAN_FORMAT, PLAN_VERSION, planSchema } from './schema.ts';
import type { Plan } from './types.ts';

/**
 * Reads a plan from its JSON form.
 *
 * @param where name of the file, for the error
 * @returns the plan, or 'not-json', 'not-a-plan', 'newer-version', 'wrong-schema'
 */
export function readPlan(text: string, where: string): Result<Plan> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (cause) {
    return err(
      'not-json',
      where,
      `The text is not JSON: ${cause instanceof Error ? cause.message : 'unreadable'}.`,
      'Export the plan again.',
    );
  }
  const head = v.safeParse(v.looseObject({ format: v.literal(PLAN_FORMAT), version: v.number() }), data);
  if (!head.success)
    return err('not-a-plan', where, `The member "format" is not "${PLAN_FORMAT}".`, 'Choose a file that holds a plan.');
  if (head.output.version > PLAN_VERSION) {
    return err(
      'newer-version',
      where,
      `The plan has version ${head.output.version}; this program reads up to ${PLAN_VERSION}.`,
      'Update the program; the file was left as it is.',
    );
  }
  const parsed = v.safeParse(planSchema, data);
  if (parsed.success) return ok(parsed.output);
  const first = parsed.issues[0];
  const path = v.getDotPath(first) ?? 'the top level';
  return err('wrong-schema', `${where}, ${path}`, first.message, 'Correct this member, or make the plan again.');
}

/** The JSON text of a plan. */
export function writePlan(plan: Plan): string {
  return `${JSON.stringify(plan, null, 1)}\n`;
}
