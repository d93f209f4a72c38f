export { drawWords } from './draw.ts';
export { estimateWords } from './estimate.ts';
export { fieldWorkWords } from './field-work.ts';
export { groundWords } from './ground.ts';
