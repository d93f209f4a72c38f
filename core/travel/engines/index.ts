export { readRefusal, readTableAnswer } from './answer.ts';
export { blocksFor } from './blocks.ts';
export { readEngineAddress, requestFor } from './request.ts';
export { type Asked, type Block, ENGINE_KINDS, type Engine, type EngineCells, type EngineKind } from './types.ts';
