export { readGround, readStreetFile } from './ground-file.ts';
export { type FileMapping, MAPPING_OPTIONS, mappingOf } from './import-mapping.ts';
export { mayWrite } from './output-file.ts';
export { daysOfPlan, problemOfPlan, readPlanFile, staleIssues } from './plan-problem.ts';
export { type BookInput, isBookFile, readBookFile } from './read-book.ts';
export { ROADS_OPTION, withDrives } from './road-drives.ts';
export { propertiesOf, rigOf, roundOf, treatmentsOf, withZonesOf } from './round.ts';
