export { type Aboard, type Content, type DayNow, dayNow, restName, underWayOf } from './day-now.ts';
export { doneWork } from './done-work.ts';
export { type Call, type FillVisit, type Morning, morningOf, type TightGate } from './morning.ts';
export { type DoneTask, withUsed } from './products.ts';
export { visitAsPlanned } from './record.ts';
export { type UsedAgainstPlan, usedAgainstPlan } from './used.ts';
