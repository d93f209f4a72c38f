import { Inflate } from 'fflate';
import { joinBytes } from '../../base/index.ts';

export type Inflated =
  | { readonly kind: 'bytes'; readonly bytes: Uint8Array }
  | { readonly kind: 'too-large' }
  | { readonly kind: 'broken' };

/** Packed bytes handed to the inflater at a time; it makes at most 1,032 times as many of them (the limit of DEFLATE). */
const STEP = 16 * 1024;

/** Unpacks raw DEFLATE and stops as soon as more than `mostBytes` have come out, whatever the headers said. */
export function inflate(packed: Uint8Array, mostBytes: number): Inflated {
  const parts: Uint8Array[] = [];
  let size = 0;
  let isComplete = false;
  const stream = new Inflate((part, isFinal) => {
    parts.push(part);
    size += part.length;
    isComplete = isFinal;
  });
  try {
    for (let at = 0; at < packed.length && size <= mostBytes; at += STEP) {
      stream.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
    }
  } catch {
    return { kind: 'broken' };
  }
  if (size > mostBytes) return { kind: 'too-large' };
  return isComplete ? { kind: 'bytes', bytes: joinBytes(parts) } : { kind: 'broken' };
}
