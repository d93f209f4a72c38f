export { counted, rigDays } from './counted.ts';
export { issueLines } from './issues.ts';
export { type Column, tableLines } from './table.ts';
