export { clockOf, counted, dateWords, type Formatter, formatterFor } from './formatter.ts';
export { tagsFrom, tagText } from './tags.ts';
export { todayHere } from './today.ts';
