export { benchWords } from './bench.ts';
export { machinesWords } from './machines.ts';
export { productsWords } from './products.ts';
export { rigsWords } from './rigs.ts';
export { roadsWords } from './roads.ts';
export { shedWords } from './shed.ts';
