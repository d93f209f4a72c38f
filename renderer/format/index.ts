export { formatNumber } from '../../core/units/index.ts';
export { counted, type Formatter, formatterFor, momentWords } from './formatter.ts';
export { readingBy, type WeekBegin, weekBeginBy } from './reading.ts';
export { tagsFrom, tagText } from './tags.ts';
export { todayHere } from './today.ts';
