export { lawnQuote, NO_ESTIMATE } from './lawn-quote.ts';
export { visitPrice } from './price.ts';
export type * from './types.ts';
