export { addressesWords } from './addresses.ts';
export { backdropWords } from './backdrop.ts';
export { commonWords } from './common.ts';
export { mapWords } from './map.ts';
export { paperWords } from './paper.ts';
export { passesWords } from './passes.ts';
export { ribbonWords } from './ribbon.ts';
