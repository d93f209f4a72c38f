import { expect, test } from 'vitest';
import { judgeRoutes, ROUTING_FORMATS } from '../../core/routing/index.ts';
import { NO_INSTANCES, publicInstances } from './shared.ts';

test.for(['hfvrp-X', 'sdvrptw', 'mtvrptwr'])('stored routes cost what is stored: %s', (set, context) => {
  const instances = publicInstances(set, /X(101|110|148|204)|PR0|0[12]R0.5/);
  if (instances === null) return context.skip(NO_INSTANCES);
  expect(instances.length).toBeGreaterThan(3);
  for (const { entry, text, stored } of instances) {
    const read = ROUTING_FORMATS[0]?.read(text, entry.file, {});
    if (read?.ok !== true) throw new Error(read?.error.detail);
    const routes = [...stored.matchAll(/^Route #\d+:(.*)$/gm)].map((line) =>
      (line[1] as string).split(/\s+/).filter(Boolean).map(Number),
    );
    const { cost, faults } = judgeRoutes(read.value, routes);
    expect(faults, entry.instance).toEqual([]);
    expect(cost / (entry.bestKnown ?? 0), entry.instance).toBeCloseTo(1, 6);
  }
});
