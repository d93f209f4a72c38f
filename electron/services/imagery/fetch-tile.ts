import { err, ok, type Result } from '../../../core/base/index.ts';
import { readImageHead } from '../../../core/imagery/index.ts';
import { LARGEST_TILE } from './tile-source.ts';

export type FetchWish = {
  readonly address: string;
  /** Protocol and host; an answer that points elsewhere is not followed. */
  readonly origin: string;
  readonly userAgent: string;
  readonly limitMs: number;
};

const MOST_REDIRECTS = 3;

/**
 * Fetches one picture. No cookies, no referrer, no more than 4 MiB, no other host, within the time limit.
 *
 * @returns null where the server says that it has none there (404, 204, 410); fails with 'not-available' where it does not
 *   answer or answers with an error, 'not-allowed' where it points to another host, 'format-invalid' for what is no picture,
 *   'file-too-large'
 */
export async function fetchTile({
  address,
  origin,
  userAgent,
  limitMs,
}: FetchWish): Promise<Result<Uint8Array | null>> {
  const where = new URL(origin).host;
  const signal = AbortSignal.timeout(limitMs);
  let next = address;
  try {
    for (let hop = 0; hop <= MOST_REDIRECTS; hop += 1) {
      const answer = await fetch(next, {
        redirect: 'manual',
        signal,
        credentials: 'omit',
        headers: { 'User-Agent': userAgent, Accept: 'image/png,image/jpeg,image/webp' },
      });
      if (answer.status < 300 || answer.status > 399) return await readAnswer(answer, where);
      await answer.body?.cancel();
      const target = new URL(answer.headers.get('location') ?? '', next);
      if (target.origin !== origin) return elsewhere(where, target.host);
      next = target.href;
    }
    return failed(where, 'It sent the request round in circles.');
  } catch (error) {
    return failed(
      where,
      error instanceof Error && error.name === 'TimeoutError' ? 'It did not answer in time.' : 'It cannot be reached.',
    );
  }
}

async function readAnswer(answer: Response, where: string): Promise<Result<Uint8Array | null>> {
  if ([204, 404, 410].includes(answer.status)) {
    await answer.body?.cancel();
    return ok(null);
  }
  if (answer.status !== 200 || answer.body === null) {
    await answer.body?.cancel();
    return failed(where, `It answered with the status ${answer.status}.`);
  }
  const bytes = await readUpTo(answer.body, LARGEST_TILE);
  if (bytes === null) {
    return err('file-too-large', where, 'A tile is larger than 4 MiB.', 'Use another source of tiles.');
  }
  if (readImageHead(bytes) !== null) return ok(bytes);
  return err('format-invalid', where, 'The answer is no PNG, JPEG or WebP picture.', 'Check the address of the tiles.');
}

/** Null where there is more. */
async function readUpTo(body: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array | null> {
  const parts: Uint8Array[] = [];
  let total = 0;
  const reader = body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return Buffer.concat(parts);
    total += value.byteLength;
    parts.push(value);
    if (total <= most) continue;
    await reader.cancel();
    return null;
  }
}

function failed(where: string, detail: string): Result<never> {
  return err('not-available', where, detail, 'Check the connection; what was fetched before is still shown.');
}

function elsewhere(where: string, target: string): Result<never> {
  const detail = `It points to ${target}, which was not allowed.`;
  return err('not-allowed', where, detail, 'Use the address of the tiles themselves.');
}
