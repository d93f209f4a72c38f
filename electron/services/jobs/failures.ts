import { type AppError, err, type Result } from '../../../core/base/index.ts';

export function gaveNoPlan(): Result<never> {
  return err(
    'cancelled',
    'planning',
    'Planning was cancelled before there was a plan.',
    'Plan again when you are ready.',
  );
}

export function workerFault(detail: string): AppError {
  return {
    code: 'internal',
    where: 'planning',
    detail: `Planning stopped because of a fault in the program (${detail}).`,
    hint: 'Try another seed, and report this with the log file.',
  };
}
