/**
 * Test files and folders of them that have a process of their own for every file: they put something in the place of a module, of the
 * clock or of the time zone. The others share processes, in which a module is loaded once, which takes a third of the time.
 */
export const ALONE: readonly string[] = [
  'tests/electron/services/faults/',
  'tests/electron/services/ground/watch.test.ts',
  'tests/electron/services/log/',
  'tests/renderer/',
];
