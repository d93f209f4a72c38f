export { faultDetail } from './fault.ts';
export { createLog, type Log, type LogDetail, type LogLevel, NO_LOG, readLogEnd } from './log.ts';
