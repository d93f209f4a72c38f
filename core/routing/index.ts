export { judgeRoutes, type RoutesJudged } from './check.ts';
export { type ReadOptions, ROUTING_FORMATS, type RoutingFormat } from './read/index.ts';
export { type RoutingOptions, type RoutingRun, solveRouting } from './search.ts';
export type * from './types.ts';
