import { useMemo } from 'react';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import type { DayWays } from '../../../core/reports/index.ts';
import type { RouteLeg } from '../../map/index.ts';
import { routeOf, useWays } from '../../scene/index.ts';
import { useBook } from '../../stores/index.ts';

const NO_LEGS: readonly RouteLeg[] = [];

/** The drives of a day along the roads beside the book, once the host has found them; undefined until then and where there are none. */
export function useDayWays(day: PlanDay | null): DayWays | undefined {
  const book = useBook((state) => state.open?.book ?? null);
  const asked = useMemo(() => (day === null || book === null ? NO_LEGS : routeOf(book, day)), [book, day]);
  const { legs, credit } = useWays(asked);
  return useMemo(() => {
    const drives = legs.flatMap(({ from, to, along }) => (along === undefined ? [] : [{ from, to, along }]));
    return drives.length === 0 ? undefined : { drives, credit };
  }, [legs, credit]);
}
