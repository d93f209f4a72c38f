import type { AppError } from '../../core/base/index.ts';
import type { PickedFile, RequestOf, WrittenFile } from '../../core/contract/index.ts';
import { filesWords } from '../texts/stores/index.ts';
import { askHost } from './host.ts';
import { showError, showNews } from './notices.ts';

type Purpose = RequestOf<'file.pick'>['purpose'];

const ENDINGS: Readonly<Record<Purpose, string>> = {
  book: '.swardway,.json',
  geojson: '.geojson,.json',
  csv: '.csv,.txt',
  matrix: '.csv',
  plan: '.json',
  background: '.mbtiles,.pmtiles,.tif,.tiff',
  picture: '.png,.jpg,.jpeg',
  streets: '.zip,.geojson,.json',
  ground: '.geojson,.json,.kml,.kmz,.gpx,.zip,.shp,.gpkg,.dxf,.csv,.txt',
  heights: '.tif,.tiff',
  roads: '.pbf,.osm',
};

/** Lets the user choose a file: by the system's dialog where the host has one, else by the browser's. Null when given up. */
export async function pickFile(purpose: Purpose, endings = ENDINGS[purpose]): Promise<PickedFile | null> {
  const answer = await askHost('file.pick', { purpose });
  if (answer === null || answer.kind === 'cancelled') return null;
  if (answer.kind === 'picked') return answer;
  const file = await browserFile(endings);
  return file === null ? null : uploadFile(purpose, file);
}

/** Hands a file that the page holds (chosen or dropped) to the host. */
export async function uploadFile(purpose: Purpose, file: File): Promise<PickedFile | null> {
  if (file.size > LARGEST_UPLOAD) {
    showError(tooLarge(purpose, file));
    return null;
  }
  return askHost('file.upload', { purpose, name: file.name, base64: await toBase64(file) });
}

/** The contract takes 64 MiB. */
const LARGEST_UPLOAD = 64 * 1024 * 1024;

function tooLarge(purpose: Purpose, { name, size }: File): AppError {
  const detail = filesWords.files.tooLarge(Math.round(size / 1024 / 1024));
  const elsewhere = filesWords.files.tooLargeAdvice;
  const hint = purpose === 'background' ? filesWords.files.tooLargeBackground : elsewhere;
  return { code: 'file-too-large', where: name, detail, hint };
}

function browserFile(endings: string): Promise<File | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = endings;
  return new Promise((settle) => {
    input.addEventListener('change', () => settle(input.files?.[0] ?? null), { once: true });
    input.addEventListener('cancel', () => settle(null), { once: true });
    input.click();
  });
}

function toBase64(file: File): Promise<string> {
  const reader = new FileReader();
  return new Promise((settle, fail) => {
    reader.addEventListener('load', () => {
      const address = String(reader.result);
      settle(address.slice(address.indexOf(',') + 1));
    });
    reader.addEventListener('error', () => fail(reader.error ?? new Error('the file could not be read')));
    reader.readAsDataURL(file);
  });
}

/** Says where a written file went; one that was handed to the page is offered as a download. */
export function receiveFile(written: WrittenFile | null): void {
  if (written === null || written.kind === 'cancelled') return;
  if (written.kind === 'download') download(written.name, written.mediaType, written.base64);
  showNews(filesWords.files.written(written.name));
}

function download(name: string, mediaType: string, base64: string): void {
  const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A book's name without the signs that file systems do not take. */
export function fileName(name: string): string {
  const plain = name
    .replace(/[\\/:*?"<>|\p{Cc}]/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[ .]+|[ .]+$/g, '')
    .slice(0, 80);
  return plain === '' ? 'ground' : plain;
}
