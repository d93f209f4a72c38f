import type { Book, Programme, ProgrammeStep } from '../../../../core/book/index.ts';
import { freshId } from '../../../stores/index.ts';
import { programmesWords } from '../../../texts/round/index.ts';

/** A programme with one step of the book's first treatment. */
export function newProgramme(book: Book): Programme {
  return {
    id: freshId(book.programmes, 'programme'),
    name: programmesWords.edits.newName(book.programmes.length + 1),
    steps: [newStep(book, [])],
    note: '',
  };
}

/** A step in spring, or in the month after the last one. */
export function newStep(book: Book, steps: readonly ProgrammeStep[]): ProgrammeStep {
  const last = steps.at(-1);
  const month = last === undefined ? 3 : (Number(last.to.slice(0, 2)) % 12) + 1;
  const two = String(month).padStart(2, '0');
  return {
    id: freshId(steps, 'step'),
    name: programmesWords.edits.newStep(steps.length + 1),
    treatmentIds: last?.treatmentIds ?? book.treatments.slice(0, 1).map((each) => each.id),
    from: `${two}-01`,
    to: `${two}-28`,
  };
}

/** The programme with one step changed; members that are undefined are taken away. */
export function withStep(
  programme: Programme,
  stepId: string,
  changes: { readonly [Key in keyof ProgrammeStep]?: ProgrammeStep[Key] | undefined },
): Programme {
  const steps = programme.steps.map((step) => {
    if (step.id !== stepId) return step;
    const merged = { ...step, ...changes };
    return Object.fromEntries(Object.entries(merged).filter(([, value]) => value !== undefined)) as ProgrammeStep;
  });
  return { ...programme, steps };
}

/** The programme without a step; what followed it follows nothing. */
export function withoutStep(programme: Programme, stepId: string): Programme {
  const steps = programme.steps
    .filter((each) => each.id !== stepId)
    .map(({ after, ...step }) => (after === undefined || after.stepId === stepId ? step : { ...step, after }));
  return { ...programme, steps };
}
