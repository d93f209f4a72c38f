export { fingerprintOf } from './fingerprint.ts';
