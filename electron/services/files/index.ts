export { flushFolder, folderMissing, type WriteSteps, writeOwn, writeWhole } from './atomic-write.ts';
export { type BoundedSource, openBoundedSource } from './bounded-source.ts';
export { type FileError, fileFailure, isFileError } from './failures.ts';
export { dataFolder, describePlace, fileNameFrom, shortFolder } from './places.ts';
export { decodeText, LARGEST_FILE, readText, tooLarge } from './read-text.ts';
export { createFileTokens, type FileTokens } from './tokens.ts';
export { createTurn, type Turn } from './turn.ts';
