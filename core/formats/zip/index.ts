export { isZip, openZip, type ZipArchive, type ZipEntry } from './archive.ts';
export { crc32 } from './checksum.ts';
export { inflate } from './inflate.ts';
