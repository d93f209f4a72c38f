import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { watchTime } from '../../../../electron/services/ground/watch.ts';

/** Processor time as the test says, milliseconds; the clock is vitest's. */
let used = 0;
beforeEach(() => {
  used = 0;
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'performance'] });
  vi.spyOn(process, 'cpuUsage').mockImplementation((since) => ({
    user: used * 1000 - (since?.user ?? 0),
    system: 0 - (since?.system ?? 0),
  }));
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

const pass = (clockMs: number, processorMs: number): void => {
  used += processorMs;
  vi.advanceTimersByTime(clockMs);
};

describe('watchTime', () => {
  it('ends work that uses the processor up', () => {
    const over = vi.fn();
    watchTime(2000, over);
    pass(1900, 1900);
    expect(over).not.toHaveBeenCalled();
    pass(200, 200);
    expect(over).toHaveBeenCalledTimes(1);
    pass(60_000, 60_000);
    expect(over).toHaveBeenCalledTimes(1);
  });

  it('has patience with work that waits for the processor, up to ten times as long', () => {
    const over = vi.fn();
    watchTime(2000, over);
    pass(19_000, 500);
    expect(over).not.toHaveBeenCalled();
    pass(1200, 0);
    expect(over).toHaveBeenCalledTimes(1);
  });

  it('shares the processor time among all that is watched, and forgets what has ended', () => {
    const [first, second] = [vi.fn(), vi.fn()];
    const watch = watchTime(2000, first);
    watchTime(2000, second);
    pass(3900, 3900);
    expect(first).not.toHaveBeenCalled();
    watch.stop();
    watch.stop();
    pass(200, 0);
    expect(first).not.toHaveBeenCalled();
    expect(second).toHaveBeenCalledTimes(1);
  });
});
