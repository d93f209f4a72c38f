import { formatArea, formatShare, quantity } from '../../units/index.ts';
import type { Op } from '../problem/index.ts';
import type { Names } from './names.ts';
import type { PlanTask } from './types.ts';

/** What a machine's minutes and material come from; nothing for work on foot. */
export function reckonedOf(op: Op, names: Names): Pick<PlanTask, 'reckoned'> {
  const { method, ground } = op;
  if (method.kind === 'hand') return {};
  if (ground === undefined) {
    const fieldEfficiency = names.head(method.machineId, method.headId)?.fieldEfficiency;
    return fieldEfficiency === undefined ? {} : { reckoned: { from: 'field-capacity', fieldEfficiency } };
  }
  const treatedSqFt = op.areaUnits - ground.leftUnits;
  const averageRate = treatedSqFt > 0 ? ground.coveredUnits / treatedSqFt : 0;
  return {
    reckoned: {
      from: 'passes',
      coveredSqFt: ground.coveredUnits,
      overlapShare: Math.max(0, averageRate - 1),
      averageRate,
      worstRate: ground.worstPasses,
      swaths: ground.swaths,
      trimPasses: ground.trims,
      notReachedSqFt: ground.leftUnits,
    },
  };
}

/** The same in words: what is covered for what is treated, and what is left untreated, with the reason. */
export function reckonedWords(op: Op, names: Names): readonly string[] {
  const { reckoned } = reckonedOf(op, names);
  if (reckoned === undefined) return [];
  if (reckoned.from === 'field-capacity') {
    return [`Reckoned from field capacity, field efficiency ${formatShare(reckoned.fieldEfficiency)}.`];
  }
  const { coveredSqFt, overlapShare, swaths, trimPasses, notReachedSqFt } = reckoned;
  const treated = area(op.areaUnits - notReachedSqFt);
  const over = `${area(coveredSqFt)} covered for ${treated} treated, ${formatShare(overlapShare)} overlap`;
  const words = `Reckoned from its passes, ${trimPasses} round edges and ${swaths} swaths: ${over}.`;
  return notReachedSqFt > 0 ? [words, leftWords(op, names)] : [words];
}

/** Ground that the machine does not reach and nobody trims by hand. */
function leftWords({ method, ground }: Op, names: Names): string {
  const left = ground?.leftUnits ?? 0;
  const head = method.kind === 'machine' ? names.head(method.machineId, method.headId) : undefined;
  const from = head?.passes?.handTrimFromSqFt ?? 0;
  const why = left < from ? `hand trim is planned from ${area(from)} on` : 'no hand tool on this rig may treat them';
  return `${area(left)} not reached by the machine and left untreated: ${why}.`;
}

const area = (squareFeet: number): string => formatArea(quantity(squareFeet), 'us');
