export { clockOf, counted, dateWords, type Formatter, formatterFor } from './formatter.ts';
export { todayHere } from './today.ts';
