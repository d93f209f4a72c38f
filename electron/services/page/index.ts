export { type PageFile, readPageFile } from './page-file.ts';
export { contentSecurityPolicy, pageHeaders } from './policy.ts';
