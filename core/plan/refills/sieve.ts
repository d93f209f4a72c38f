import type { Dominance } from './dominance.ts';
import { COST, type Labels, TIME } from './labels.ts';
import type { Outlook } from './outlook.ts';
import type { Reset, Resets } from './resets.ts';

/** Keeps the labels that may still become the best. */
export class Sieve {
  beam = 1;
  upper = Number.POSITIVE_INFINITY;
  latestMs = 0;
  /** True once the beam has cut labels off, so that the result may not be the best. */
  cut = false;
  private readonly labels: Labels;
  private readonly dominance: Dominance;
  private readonly resets: Resets;
  private readonly outlook: Outlook;
  private readonly tooLong: () => void;

  constructor(labels: Labels, dominance: Dominance, resets: Resets, outlook: Outlook, tooLong: () => void) {
    this.labels = labels;
    this.dominance = dominance;
    this.resets = resets;
    this.outlook = outlook;
    this.tooLong = tooLong;
  }

  /**
   * Labels that no other one beats before op i, by time; at most the beam. `from`: the op that was done last, or i itself where the
   * rig has just set up for it, so that no station can be reached before it.
   */
  prune(list: number[], i: number, from: number, reset: Reset | null): number[] {
    const { labels, dominance, resets } = this;
    const { data } = labels;
    const hopeful = this.withinBounds(list, i, from);
    if (hopeful.length < 2) return hopeful;
    hopeful.sort(
      (a, b) =>
        (data[a + TIME] as number) - (data[b + TIME] as number) ||
        (data[a + COST] as number) - (data[b + COST] as number),
    );
    const kept: number[] = [];
    const short: number[] = [];
    const waitMs = this.outlook.waitMs(i, from);
    for (const at of hopeful) {
      let beaten = false;
      for (let k = 0; k < kept.length && !beaten; k += 1) {
        const other = kept[k] as number;
        beaten =
          dominance.beats(other, at, i, short[k] as number, waitMs) ||
          (reset !== null && resets.beats(other, at, i, reset, waitMs));
      }
      if (beaten) {
        labels.release(at);
      } else {
        kept.push(at);
        short.push(dominance.shortage(at, i));
      }
    }
    return kept.length > this.beam ? this.cutToBeam(kept) : kept;
  }

  /** Drops labels that cannot end in time, or not below the cost that is known to be possible. */
  private withinBounds(list: number[], i: number, from: number): number[] {
    const { labels, outlook, upper, latestMs } = this;
    let kept = 0;
    for (const at of list) {
      const restMs = outlook.restMs(at, i, from);
      const late = (labels.data[at + TIME] as number) + restMs > latestMs;
      if (late) this.tooLong();
      if (late || outlook.cost(at, from, restMs) > upper) labels.release(at);
      else list[kept++] = at;
    }
    list.length = kept;
    return list;
  }

  private cutToBeam(kept: number[]): number[] {
    this.cut = true;
    if (!this.dominance.hasty) kept.sort((a, b) => this.outlook.guess(a) - this.outlook.guess(b));
    for (const at of kept.splice(this.beam)) this.labels.release(at);
    return kept;
  }
}
