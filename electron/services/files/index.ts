export { folderMissing, freshBeside, isFreshName, writeOwn, writeWhole } from './atomic-write.ts';
export { type BoundedSource, openBoundedSource } from './bounded-source.ts';
export { fileFailure, isFileError, isUnconfirmed } from './failures.ts';
export { dataFolder, describePlace, fileNameFrom, freeName, shortFolder } from './places.ts';
export { decodeText, LARGEST_FILE, readText, tooLarge } from './read-text.ts';
export { flushFile, takePlace } from './take-place.ts';
export { createFileTokens, type FileTokens } from './tokens.ts';
export { createTurn, type Turn } from './turn.ts';
