import { openStore } from '../../../electron/services/store/index.ts';

/**
 * A program for tests that need a second process: PROGRAM FILE. Opens the book and draws an outline that has one corner more
 * at every step, each kept with the book; prints "kept N" after the step with N corners is stored.
 */
async function drawForEver(file: string): Promise<void> {
  const open = await openStore(file);
  if (!open.ok) throw new Error(open.error.detail);
  const corners: (readonly [number, number])[] = [];
  for (;;) {
    corners.push([corners.length, corners.length]);
    const kept = await open.value.saveDraft(JSON.stringify({ corners }), new Date(0).toISOString());
    if (!kept.ok) throw new Error(kept.error.detail);
    process.stdout.write(`kept ${corners.length}\n`);
  }
}

drawForEver(process.argv[2] ?? '').catch((error: unknown) => {
  process.stderr.write(`${String(error)}\n`);
  process.exitCode = 1;
});
