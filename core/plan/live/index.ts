export { type Aboard, type Content, type DayNow, dayNow, restName, underWayOf } from './day-now.ts';
export { visitAsPlanned } from './record.ts';
export { CALIBRATION_SHARE, type UsedAgainstPlan, usedAgainstPlan } from './used.ts';
