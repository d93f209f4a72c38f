export { COMMANDS } from './commands/index.ts';
export { referenceOf } from './help.ts';
export * from './output/index.ts';
