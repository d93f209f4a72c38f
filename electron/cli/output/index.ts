export { type DemandOutput, demandSchema } from './demand.ts';
export { type ExportOutput, exportSchema } from './export.ts';
export { failureSchema } from './failure.ts';
export { type ImportOutput, importSchema } from './import.ts';
export { type JudgeOutput, judgeSchema } from './judge.ts';
export { measureSchema } from './measure.ts';
export { type ReachOutput, reachSchema } from './reach.ts';
export { type ReportOutput, reportSchema } from './report.ts';
export { type SolveOutput, solveSchema } from './solve.ts';
