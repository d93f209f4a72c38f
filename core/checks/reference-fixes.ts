import type { Book } from '../book/index.ts';
import type { Action } from '../edit/index.ts';
import type { Fix } from './rule.ts';

type Programme = Book['programmes'][number];
type Round = Book['rounds'][number];

/** Takes a treatment that is gone out of every step of a programme; steps that had nothing else go with it. */
export function treatmentOutOfProgramme(programmeId: string, treatmentId: string): Fix {
  const label = 'Take it out of the programme';
  return programmeFix(label, programmeId, (programme) => {
    const cut = programme.steps.map((step) => ({
      ...step,
      treatmentIds: step.treatmentIds.filter((id) => id !== treatmentId),
    }));
    return {
      ...programme,
      steps: withoutSteps(cut, new Set(cut.filter((step) => step.treatmentIds.length === 0).map(({ id }) => id))),
    };
  });
}

/** Steps without some of them; those that came after one of these come after nothing. */
function withoutSteps(steps: Programme['steps'], gone: ReadonlySet<string>): Programme['steps'] {
  return steps.flatMap((step) => {
    if (gone.has(step.id)) return [];
    const { after, ...rest } = step;
    return [after === undefined || gone.has(after.stepId) ? rest : step];
  });
}

/** A step without its timing, where that is gone. */
export function timingOutOfStep(programmeId: string, stepId: string): Fix {
  return stepFix('Leave the timing out', programmeId, stepId, ({ timingId: _, ...rest }) => rest);
}

/** A step that comes after none, where the one before it is gone. */
export function stepWithoutBefore(programmeId: string, stepId: string): Fix {
  return stepFix('Let it come after none', programmeId, stepId, ({ after: _, ...rest }) => rest);
}

type Step = Programme['steps'][number];

function stepFix(label: string, programmeId: string, stepId: string, change: (step: Step) => Step): Fix {
  return programmeFix(label, programmeId, (programme) => ({
    ...programme,
    steps: programme.steps.map((step) => (step.id === stepId ? change(step) : step)),
  }));
}

/** A programme without any step left is removed. */
function programmeFix(label: string, programmeId: string, change: (programme: Programme) => Programme): Fix {
  return {
    label,
    action: (book): Action | null => {
      const programme = book.programmes.find((each) => each.id === programmeId);
      if (programme === undefined) return null;
      const record = change(programme);
      return record.steps.length === 0
        ? { kind: 'remove', table: 'programmes', id: programmeId, label }
        : { kind: 'put', table: 'programmes', record, label };
    },
  };
}

/** A fix of a round; `change` gives null where the round cannot be without it. */
function roundFix(label: string, roundId: string, change: (round: Round) => Round | null): Fix {
  return {
    label,
    action: (book) => {
      const round = book.rounds.find((each) => each.id === roundId);
      const record = round === undefined ? null : change(round);
      return record === null ? null : { kind: 'put', table: 'rounds', record, label };
    },
  };
}

/** A round without a treatment that is gone; none where it has no other. */
export function treatmentOutOfRound({ id, treatmentIds }: Round, treatmentId: string): Fix | null {
  if (treatmentIds.every((each) => each === treatmentId)) return null;
  return roundFix('Take it out of the round', id, (round) => {
    const left = round.treatmentIds.filter((each) => each !== treatmentId);
    const { only, ...rest } = round;
    const narrowed = only?.filter((each) => each.treatmentId !== treatmentId) ?? [];
    if (left.length === 0) return null;
    return { ...rest, treatmentIds: left, ...(narrowed.length === 0 ? {} : { only: narrowed }) };
  });
}

/** A round without a rig that is gone; none where it has no other. */
export function rigOutOfRound({ id, rigIds }: Round, rigId: string): Fix | null {
  if (rigIds.every((each) => each === rigId)) return null;
  return roundFix('Take it out of the round', id, (round) => {
    const left = round.rigIds.filter((each) => each !== rigId);
    return left.length === 0 ? null : { ...round, rigIds: left };
  });
}

/** A round without a property that is gone: neither listed, nor skipped, nor promised. */
export function propertyOutOfRound(roundId: string, propertyId: string): Fix {
  return roundFix('Take it out of the round', roundId, (round) => {
    const { promised, ...rest } = round;
    const kept = promised?.filter((each) => each.propertyId !== propertyId) ?? [];
    return {
      ...rest,
      propertyIds: round.propertyIds === 'all' ? 'all' : round.propertyIds.filter((each) => each !== propertyId),
      skipped: round.skipped.filter((each) => each.propertyId !== propertyId),
      ...(kept.length === 0 ? {} : { promised: kept }),
    };
  });
}

/** A round without its timing, where that is gone. */
export function timingOutOfRound(roundId: string): Fix {
  return roundFix('Leave the timing out', roundId, ({ timingId: _, ...rest }) => rest);
}

/** A round of no programme, where its own is gone. */
export function roundWithoutSeason(roundId: string): Fix {
  return roundFix('Let it belong to no programme', roundId, ({ season: _, ...rest }) => rest);
}
