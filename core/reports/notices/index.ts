export { FIELD_NAMES } from './fields.ts';
export { notices, postings } from './notices.ts';
