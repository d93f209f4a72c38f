export { createLog, type Log, type LogDetail, type LogLevel, NO_LOG } from './log.ts';
