export { formatNumber } from '../../core/units/index.ts';
export { counted, type Formatter, formatterFor, momentWords } from './formatter.ts';
export { tagsFrom, tagText } from './tags.ts';
export { todayHere } from './today.ts';
