export { isZip, openZip, type ZipArchive, type ZipEntry } from './archive.ts';
