import { expect } from 'vitest';

/** True where all inputs are asked for (`npm run test:fuzz`); the whole suite of tests takes a small share of them. */
export const WHOLE_FUZZ = process.env.npm_lifecycle_event === 'test:fuzz';

/** What reading one odd input may add to the most memory that the process ever held, MiB. */
const MOST_MEMORY_MIB = 500;

/** Counts what became of the odd inputs of one reader. */
export type Tally = {
  /** @param outcome "read", or the code of the refusal */
  readonly note: (outcome: string, tookMs: number) => void;
  /** Checks the growth of memory, and prints the figures where all inputs were asked for. Returns what became of how many. */
  readonly close: () => ReadonlyMap<string, number>;
};

export function openTally(reader: string): Tally {
  const outcomes = new Map<string, number>();
  const peakBefore = peakMib();
  let longestMs = 0;
  return {
    note: (outcome, tookMs) => {
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
      longestMs = Math.max(longestMs, tookMs);
    },
    close: () => {
      const grownMib = peakMib() - peakBefore;
      expect(grownMib, `${reader}: growth of memory, MiB`).toBeLessThan(MOST_MEMORY_MIB);
      const inputs = [...outcomes.values()].reduce((sum, each) => sum + each, 0);
      if (WHOLE_FUZZ) {
        const read = outcomes.get('read') ?? 0;
        console.log(
          `fuzz | ${reader} | ${inputs} | ${inputs - read} | ${Math.ceil(longestMs)} ms | ${Math.ceil(grownMib)} MiB`,
        );
      }
      return outcomes;
    },
  };
}

/** The most that this process ever held, its buffers and threads included. */
function peakMib(): number {
  return process.resourceUsage().maxRSS / 1024;
}
