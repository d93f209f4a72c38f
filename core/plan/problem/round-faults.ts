import type { AppError, Issue } from '../../base/index.ts';
import type { Book, Round } from '../../book/index.ts';

/** "round Spring": where a fault is. */
export function roundWhere(round: Round): string {
  return `round ${round.name === '' ? round.id : round.name}`;
}

/** The first thing that makes planning senseless; null where there is none. */
export function firstFault(
  book: Book,
  round: Round,
  dates: readonly string[],
  gathered: { readonly facts: readonly unknown[]; readonly issues: readonly Issue[] },
  noneOpen: string,
): AppError | null {
  const where = roundWhere(round);
  const broken = gathered.issues.find((each) => each.code === 'label-limit-broken');
  if (broken !== undefined) {
    return {
      code: 'label-limit-broken',
      where: broken.where,
      detail: broken.message,
      hint: 'Lower the rate of the mix or treatment, or correct the limit if it was entered wrongly.',
    };
  }
  if (dates.length === 0)
    return {
      code: 'nothing-to-do',
      where,
      detail: 'No working day is left to plan.',
      hint: 'Give the round at least one date.',
    };
  if (noneOpen !== '') {
    return {
      code: 'nothing-to-do',
      where,
      detail: `No working day is left to plan: ${noneOpen}.`,
      hint: 'Give the round other days, use the days that are held back, or change the calendar.',
    };
  }
  if (gathered.facts.length === 0) {
    return {
      code: 'nothing-to-do',
      where,
      detail: 'No property of the round has turf to treat.',
      hint: 'Add properties with zones, or take fewer of them out of the round.',
    };
  }
  return rigFault(book, round, where);
}

function rigFault(book: Book, round: Round, where: string): AppError | null {
  const carriedBy = new Map<string, string>();
  for (const rigId of round.rigIds) {
    const rig = book.rigs.find((each) => each.id === rigId);
    if (rig === undefined)
      return {
        code: 'reference-missing',
        where,
        detail: `Rig ${rigId} is not in the book.`,
        hint: 'Choose rigs that are in the shed.',
      };
    if (!book.fillPoints.some((each) => each.id === rig.homeId)) {
      return {
        code: 'reference-missing',
        where: `rig ${rig.name}`,
        detail: `Its home ${rig.homeId} is not a fill point of the book.`,
        hint: 'Give the rig a shop to start from.',
      };
    }
    if (rig.endId !== undefined && !book.fillPoints.some((each) => each.id === rig.endId)) {
      return {
        code: 'reference-missing',
        where: `rig ${rig.name}`,
        detail: `The end of its day ${rig.endId} is not a fill point of the book.`,
        hint: 'Let its day end at a fill point of the book, or where it starts.',
      };
    }
    for (const { machineId } of rig.machines) {
      const other = carriedBy.get(machineId);
      if (other !== undefined) {
        return {
          code: 'book-invalid',
          where: `rig ${rig.name}`,
          detail: `Machine ${machineId} also rides on ${other}.`,
          hint: 'Leave the machine on one of the rigs of this round.',
        };
      }
      carriedBy.set(machineId, rig.name);
    }
  }
  return null;
}
