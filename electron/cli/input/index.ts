export { mayWrite } from './output-file.ts';
export { problemOfPlan, readPlanFile } from './plan-problem.ts';
export { type BookInput, isBookFile, readBookFile } from './read-book.ts';
export { propertiesOf, rigOf, roundOf, treatmentsOf } from './round.ts';
