export * from './engine/index.ts';
export * from './models/index.ts';
export { type ReadOptions, ROUTING_FORMATS, type RoutingFormat } from './read/index.ts';
