export { joinBytes } from './bytes.ts';
export { canonicalJson, fingerprint, fingerprintNumbers } from './fingerprint.ts';
export { hasErrors, type Issue, issue, type Severity } from './issue.ts';
export { createRandom, type Random } from './random.ts';
export { type AppError, type Err, type ErrorCode, err, type Ok, ok, type Result } from './result.ts';
export { type Clock, NEVER_STOP, type Progress, type StopSignal } from './run.ts';
