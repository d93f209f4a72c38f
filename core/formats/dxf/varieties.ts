import { err, type Result } from '../../base/index.ts';
import { decodeLatin } from '../text/index.ts';

const BINARY_START = 'AutoCAD Binary DXF';
/** "AC" and a version number: the first bytes of a DWG file. */
const DWG_START = /^AC10\d\d|^AC1\.\d|^AC2\.\d/;

function startOf(bytes: Uint8Array): string {
  return decodeLatin(bytes.subarray(0, 32));
}

export function isBinaryDrawing(bytes: Uint8Array): boolean {
  return startOf(bytes).startsWith(BINARY_START) || DWG_START.test(startOf(bytes));
}

/** The refusal of a drawing that is not text, with the way out; null for any other file. */
export function refuseBinary(bytes: Uint8Array, where: string): Result<never> | null {
  const start = startOf(bytes);
  if (DWG_START.test(start)) {
    const hint = 'Open it where it was drawn and save it as DXF (text), or ask for that file.';
    return err('format-unknown', where, 'The file is a DWG drawing, which is not read.', hint);
  }
  if (!start.startsWith(BINARY_START)) return null;
  const hint = 'Save the drawing again as DXF in text form (ASCII).';
  return err('format-unknown', where, 'The file is a DXF drawing in binary form, which is not read.', hint);
}
