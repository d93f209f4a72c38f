import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder that goes when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'swardway-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true, maxRetries: 3 }));
  return folder;
}
