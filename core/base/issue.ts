/** How much an issue matters: an error keeps its subject out of plans, a warning is shown, a note informs. */
export type Severity = 'error' | 'warning' | 'note';

/**
 * Something found in the input. Issues are listed, never thrown; `code` is stable, kebab-case and documented in docs/cli.md.
 */
export type Issue = {
  readonly code: string;
  readonly severity: Severity;
  /** The place, for instance "property p-12, zone back" or "features[7]". */
  readonly where: string;
  /** What is wrong and what to do about it, one or two sentences. */
  readonly message: string;
};

/** An issue from its parts; see `Issue` for what each of them says. Never throws. */
export function issue(severity: Severity, code: string, where: string, message: string): Issue {
  return { code, severity, where, message };
}

/** True where any of the issues is an error. */
export function hasErrors(issues: readonly Issue[]): boolean {
  return issues.some((each) => each.severity === 'error');
}
