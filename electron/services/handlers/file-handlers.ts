import { randomUUID } from 'node:crypto';
import path from 'node:path';
import { ok, type Result } from '../../../core/base/index.ts';
import type { PickedFile } from '../../../core/contract/index.ts';
import { decodeText, fileNameFrom, LARGEST_FILE, readText, tooLarge, writeOwn } from '../files/index.ts';
import { passingFolder } from '../ground/index.ts';
import type { FilePurpose } from '../host-port.ts';
import { BOOK_ENDING } from '../library/index.ts';
import type { Context, HandlersOf } from './context.ts';
import { deliver } from './deliver.ts';

/** What is used as a file by its token; of the others the text is given back. */
const KEPT_AS_FILES: readonly FilePurpose[] = [
  'book',
  'background',
  'picture',
  'streets',
  'ground',
  'heights',
  'roads',
];
/** What is read soon and not kept: see receivePassing. */
const PASSING: readonly FilePurpose[] = ['ground', 'heights', 'roads'];

const LONGEST_NAME = 120;

export function fileHandlers(
  context: Context,
): HandlersOf<'file.pick' | 'file.upload' | 'file.saveText' | 'print.pdf'> {
  return {
    'file.pick': async ({ purpose }, client) => {
      const chosen = await context.port.pickFile(client, purpose);
      return chosen.kind === 'path' ? describePicked(context, chosen.file, purpose) : ok(chosen);
    },
    'file.upload': ({ purpose, name, base64 }) => takeUpload(context, purpose, path.basename(name), base64),
    'file.saveText': ({ suggestedName, text }, client) =>
      deliver(context, client, suggestedName, () => ok(Buffer.from(text))),
    'print.pdf': async ({ html, suggestedName }, client) => {
      const bytes = await context.port.printPdf(html);
      return bytes.ok ? deliver(context, client, suggestedName, () => bytes) : bytes;
    },
  };
}

async function describePicked(context: Context, file: string, purpose: FilePurpose): Promise<Result<PickedFile>> {
  const token = context.tokens.give(file);
  const name = path.basename(file);
  if (KEPT_AS_FILES.includes(purpose)) return ok({ kind: 'picked', token, name, text: null });
  const text = await readText(file);
  return text.ok ? ok({ kind: 'picked', token, name, text: text.value }) : text;
}

/** A file that a page sends: what is kept as a file goes to the program's own folder, of others the text is given back. */
async function takeUpload(
  context: Context,
  purpose: FilePurpose,
  name: string,
  base64: string,
): Promise<Result<PickedFile>> {
  const bytes = Buffer.from(base64, 'base64');
  if (bytes.byteLength > LARGEST_FILE) return tooLarge(name, bytes.byteLength);
  if (!KEPT_AS_FILES.includes(purpose)) {
    const text = decodeText(bytes, name);
    return text.ok ? ok({ kind: 'picked', token: context.tokens.give(name), name, text: text.value }) : text;
  }
  if (PASSING.includes(purpose)) return receivePassing(context, name, bytes);
  const ending = name.endsWith(BOOK_ENDING) ? BOOK_ENDING : path.extname(name) || (purpose === 'book' ? '.json' : '');
  const stamp = context
    .now()
    .toISOString()
    .replace(/[^0-9]/g, '')
    .slice(0, 14);
  // A folder of its own: two files of one name may come in one second, and the clock may be set back.
  const folder = path.join(context.dataFolder, 'received', `${stamp}-${randomUUID().slice(0, 8)}`);
  const file = path.join(folder, `${fileNameFrom(path.basename(name, ending))}${ending}`);
  return receive(context, file, name, bytes);
}

async function receive(context: Context, file: string, name: string, bytes: Uint8Array): Promise<Result<PickedFile>> {
  const written = await writeOwn(file, bytes);
  return written.ok ? ok({ kind: 'picked', token: context.tokens.give(file), name, text: null }) : written;
}

/** A file that is removed once it has been read; it keeps its name, which messages speak of. */
function receivePassing(context: Context, name: string, bytes: Uint8Array): Promise<Result<PickedFile>> {
  const safe = name.replace(/[^\p{Letter}\p{Number} ._()-]/gu, '_').slice(-LONGEST_NAME);
  return receive(context, path.join(passingFolder(context.dataFolder), randomUUID(), safe), name, bytes);
}
