import { type Issue, issue } from '../../base/index.ts';
import type { Book } from '../../book/index.ts';
import { zonePasses } from '../../passes/index.ts';
import { type Method, methodName, NOWHERE } from '../../reach/index.ts';
import type { TaskFacts } from './options.ts';
import { areaUnits } from './scale.ts';
import type { OpGround } from './types.ts';

/** Passes with a machine over the ground of a task, as many times over as it takes. */
export type Driven = {
  readonly minutes: number;
  /** Ground that the material goes over as a multiple of that of the task. */
  readonly coveredShare: number;
  readonly ground: OpGround;
  /** Hand trim of less than this is only stated, ft2. */
  readonly trimFromSqFt: number;
};

/**
 * The passes by which a machine does a task: where the whole of a drawn zone is treated, and the book says how the head is driven.
 * Elsewhere null, and field capacity counts; with an issue where the head cannot be driven as the book says.
 */
export function drivenWork(
  book: Book,
  { property, zone, treatment, demand, ground }: TaskFacts,
  method: Method,
): { readonly driven: Driven | null; readonly issues: readonly Issue[] } {
  const nothing = { driven: null, issues: [] };
  if (method.kind === 'hand' || treatment.coverage.kind !== 'whole') return nothing;
  const machine = book.machines.find((each) => each.id === method.machineId);
  const head = machine?.heads.find((each) => each.id === method.headId);
  if (head?.passes === undefined) return nothing;
  const where = `property ${property.name}, zone ${zone.name}`;
  const found = zonePasses(zone, ground(), demand.treatedSqFt, head, where);
  if (!found.ok) return { driven: null, issues: [cannotDrive(methodName(book, method), found.error.detail)] };
  if (found.value === null) return nothing;
  const { minutes, coveredShare, leftShare, worstPasses, swathCount, trimCount } = found.value;
  const units = areaUnits(demand.treatedSqFt);
  return {
    driven: {
      minutes: minutes * demand.passes,
      coveredShare,
      ground: {
        coveredUnits: Math.round(demand.treatedSqFt * coveredShare),
        worstPasses,
        swaths: swathCount,
        trims: trimCount,
        leftUnits: leftShare > NOWHERE ? units : Math.min(units, Math.round(demand.treatedSqFt * leftShare)),
      },
      trimFromSqFt: head.passes.handTrimFromSqFt ?? 0,
    },
    issues: [],
  };
}

function cannotDrive(name: string, detail: string): Issue {
  const words = `${detail} Its work is reckoned from field efficiency until the passes are corrected in the shed.`;
  return issue('warning', 'passes-not-possible', name, words);
}
