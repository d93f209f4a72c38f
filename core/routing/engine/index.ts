export type * from './contract.ts';
export { UNSCREENED } from './contract.ts';
export { Search, type SearchOptions, type SearchRun, search } from './search.ts';
export { Tours } from './tours.ts';
