export { roadPath } from './path.ts';
export { roadTable, type TableOptions } from './table.ts';
