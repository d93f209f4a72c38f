export { readRefusal, readTableAnswer } from './answer.ts';
export { blocksFor } from './blocks.ts';
export { readEngineAddress, requestFor } from './request.ts';
export type { Asked, Block, Engine, EngineCells, EngineKind } from './types.ts';
