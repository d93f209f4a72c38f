export { draftsWords } from './drafts.ts';
export { filesWords } from './files.ts';
export { storesWords } from './stores.ts';
