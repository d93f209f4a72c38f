export { calibrationRecord } from './calibration-record.ts';
