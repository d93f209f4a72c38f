export { type PageFile, readPageFile } from './page-file.ts';
export { contentSecurityPolicy, pageHeaders, pictureHeaders } from './policy.ts';
