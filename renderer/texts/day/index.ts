export { boardWords } from './board.ts';
export { dayWords } from './day.ts';
export { howSureWords } from './how-sure.ts';
export { stopsWords } from './stops.ts';
export { underWayWords } from './under-way.ts';
