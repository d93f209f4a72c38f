/**
 * Time that work adds to a stretch of a stop in which two persons work side by side. `lead` is the first person's work in the stretch
 * less the second's: the stretch has lasted as long as the longer of the two. ms
 */
export function addedMs(lead: number, second: boolean, ms: number): number {
  return second ? Math.max(0, ms - lead) - Math.max(0, -lead) : Math.max(0, lead + ms) - Math.max(0, lead);
}

/** The lead after that work. */
export function leadAfter(lead: number, second: boolean, ms: number): number {
  return second ? lead - ms : lead + ms;
}
