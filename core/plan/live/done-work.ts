import type { Book } from '../../book/index.ts';
import type { DoneWork } from '../problem/index.ts';

/**
 * What of a round is not to be planned again: work that was recorded as done, and lawns that were left out for good. A visit that was
 * left out otherwise is still to come.
 */
export function doneWork({ visits }: Pick<Book, 'visits'>, roundId: string): readonly DoneWork[] {
  return visits
    .filter((visit) => visit.roundId === roundId)
    .flatMap(({ propertyId, outcome }): DoneWork[] => {
      if (outcome.kind === 'skipped') return outcome.notAgain === true ? [{ propertyId }] : [];
      return outcome.tasks.map(({ zoneId, treatmentId, step }) => ({
        propertyId,
        zoneId,
        treatmentId,
        ...(step === undefined ? {} : { step }),
      }));
    });
}
