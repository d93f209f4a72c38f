export { looksLikeTimes, previewMatrix } from './matrix.ts';
export { csvReader } from './source.ts';
