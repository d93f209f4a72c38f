/**
 * Test files and folders of them that have a process of their own for every file: they put something in the place of a module, of the
 * clock or of the time zone, or measure the processor time of their process, in which what other tests left behind would count, or
 * leave much behind themselves. The others share processes, in which a module is loaded once, which takes a third of the time.
 */
export const ALONE: readonly string[] = [
  'tests/core/checks/ground-rules.test.ts',
  'tests/core/formats/fuzz/heavy.test.ts',
  'tests/core/passes/kept.test.ts',
  'tests/electron/services/faults/',
  'tests/electron/services/ground/ground.test.ts',
  'tests/electron/services/ground/watch.test.ts',
  'tests/electron/services/log/',
  'tests/renderer/format/zones.test.ts',
  'tests/renderer/map/grid.test.ts',
  'tests/renderer/next/missing.test.ts',
  'tests/renderer/rooms/round-edits.test.ts',
  'tests/renderer/rooms/round/calendar-edits.test.ts',
  'tests/renderer/rooms/shelves.test.ts',
  'tests/renderer/rooms/terms.test.ts',
  'tests/renderer/scene/route.test.ts',
  'tests/renderer/tour/tour.test.ts',
  'tests/renderer/ui/quantity-input.test.ts',
  'tests/renderer/ui/virtual-rows.test.ts',
];
