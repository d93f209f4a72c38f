import { isBetter, type State } from './state.ts';

/** The best different plans that a search met, as it reckoned them. */
export class Shortlist {
  private readonly most: number;
  private readonly known = new Set<string>();
  private states: State[] = [];

  constructor(most: number) {
    this.most = most;
  }

  /** Takes note of a plan where it is among the best so far. */
  add(state: State): void {
    const last = this.states.at(-1);
    if (this.states.length === this.most && last !== undefined && !isBetter(state, last)) return;
    const key = state.routes.map((codes) => codes.join()).join(';');
    if (this.known.has(key)) return;
    this.known.add(key);
    const at = this.states.findIndex((other) => isBetter(state, other));
    this.states.splice(at < 0 ? this.states.length : at, 0, state);
    if (this.states.length > this.most) this.states.pop();
  }

  /** Best first. */
  list(): readonly State[] {
    return this.states;
  }
}
