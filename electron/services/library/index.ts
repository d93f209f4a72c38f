export { BOOK_ENDING, createLibrary, describeSession, type Library, type Session, storeNewBook } from './library.ts';
export type { OpenEntry } from './open-entry.ts';
export { createSamples, type Samples } from './samples.ts';
