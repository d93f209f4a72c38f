import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { printWithChromium } from '../../electron/services/printer/index.ts';
import { findChromium, NO_CHROMIUM } from '../browser/chromium.ts';

/** Why printed pages cannot be read here, or null where they can. */
export function whyNoPages(): string | null {
  if (findChromium() === null) return NO_CHROMIUM;
  return spawnSync('pdftotext', ['-v']).error === undefined ? null : 'no pdftotext found (poppler-utils)';
}

/** The text of every page of a page printed to PDF, laid out as it stands on paper. */
export async function pagesOf(html: string): Promise<readonly string[]> {
  const printed = await printWithChromium(findChromium(), html);
  if (!printed.ok) throw new Error(printed.error.detail);
  const folder = mkdtempSync(path.join(tmpdir(), 'swardway-pdf-'));
  try {
    const file = path.join(folder, 'sheets.pdf');
    writeFileSync(file, printed.value);
    const { stdout } = spawnSync('pdftotext', ['-layout', file, '-'], {
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
    });
    // A figure and its unit stand together by a space that does not break.
    return stdout.replaceAll('\u00a0', ' ').split('\f').slice(0, -1);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
