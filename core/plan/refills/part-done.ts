/** Parts of a draw of `parts` over `area` that are gone after `done` units. */
export function drawnAfter(parts: number, done: number, area: number): number {
  return done >= area ? parts : Math.ceil((parts * done) / area);
}

/** Time of an op after `done` of its `area` units. */
export function servedAfter(serviceMs: number, done: number, area: number): number {
  return done >= area ? serviceMs : Math.floor((serviceMs * done) / area);
}
