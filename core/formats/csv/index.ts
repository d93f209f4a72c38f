export { previewLawns } from './lawns.ts';
export { previewMatrix } from './matrix.ts';
export { csvReader } from './source.ts';
