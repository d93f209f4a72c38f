export { buyWords } from './buy.ts';
export { fleetsWords } from './fleets.ts';
export { planWords } from './plan.ts';
export { programmesWords } from './programmes.ts';
export { roundWords } from './round.ts';
export { seasonWords } from './season.ts';
export { setUpWords } from './set-up.ts';
