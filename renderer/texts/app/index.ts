export { appWords } from './app.ts';
export { importWords } from './import.ts';
