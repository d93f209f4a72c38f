export { judgeRoutes, type RoutesJudged } from './check.ts';
export { CompartmentModel, type CompartmentProblem } from './compartments.ts';
export { FleetModel } from './fleet.ts';
export { PlainModel } from './plain.ts';
export type { ReloadKind, ReloadProblem } from './reload-problem.ts';
export { ReloadModel } from './reloads.ts';
export { type RoutingOptions, solveRouting } from './solve.ts';
export { SplitModel } from './split.ts';
export type * from './types.ts';
