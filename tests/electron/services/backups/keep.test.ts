import { expect, test } from 'vitest';
import type { Backup } from '../../../../core/contract/index.ts';
import { superfluous } from '../../../../electron/services/backups/keep.ts';

/** Noon of a day of this machine's calendar, and hours after it. */
const at = (day: number, hour = 12): Date => new Date(2026, 2, day, hour);
const backup = (when: Date, revision = 1): Backup => ({
  backupId: when.toISOString(),
  takenAt: when.toISOString(),
  revision,
  properties: 3,
});
const kept = (backups: readonly Backup[], now: Date): readonly string[] => {
  const gone = superfluous(backups, now);
  return backups.filter((each) => !gone.includes(each)).map(({ takenAt }) => takenAt);
};

test('of today the newest three stay', () => {
  const today = [18, 16, 14, 12, 10].map((hour) => backup(at(20, hour)));
  expect(kept(today, at(20, 19))).toEqual(today.slice(0, 3).map(({ takenAt }) => takenAt));
});

test('of each day before today its newest stays, and ten in all', () => {
  const days = Array.from({ length: 14 }, (_, index) => [18, 9].map((hour) => backup(at(20 - index, hour)))).flat();
  const left = kept(days, at(20, 19));
  expect(left).toHaveLength(10);
  // Both of today, then the evening of the eight days before it.
  expect(left).toEqual(
    [at(20, 18), at(20, 9), ...[19, 18, 17, 16, 15, 14, 13, 12].map((day) => at(day, 18))].map((each) =>
      each.toISOString(),
    ),
  );
});

test('midnight makes yesterday of today', () => {
  const evening = [backup(at(20, 23)), backup(at(20, 22)), backup(at(20, 21))];
  expect(kept(evening, new Date(2026, 2, 20, 23, 59))).toHaveLength(3);
  expect(kept(evening, new Date(2026, 2, 21, 0, 1))).toEqual([at(20, 23).toISOString()]);
});

test('a clock that was set back loses no day: what is dated later counts as of today', () => {
  const later = [backup(at(25)), backup(at(24)), backup(at(23))];
  expect(kept([...later, backup(at(19))], at(20))).toEqual([...later, backup(at(19))].map(({ takenAt }) => takenAt));
});

test('what is taken after the clock was set back is kept, however many are dated later', () => {
  const later = [28, 27, 26, 25, 24, 23, 22].map((day) => backup(at(day)));
  const today = [backup(at(20, 11)), backup(at(20, 10)), backup(at(20, 9)), backup(at(20, 8))];
  const left = kept([...later, ...today], at(20));
  expect(left).toHaveLength(10);
  for (const each of today.slice(0, 3)) expect(left).toContain(each.takenAt);
});
