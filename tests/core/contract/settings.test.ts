import * as v from 'valibot';
import { expect, test } from 'vitest';
import { DEFAULT_SETTINGS, settingsChangeSchema, settingsSchema } from '../../../core/contract/index.ts';

test('every setting has a default', () => {
  const names = Object.keys(settingsSchema.entries);
  expect(Object.keys(DEFAULT_SETTINGS).sort()).toEqual(names.sort());
  expect(Object.values(DEFAULT_SETTINGS).every((value) => value !== undefined)).toBe(true);
});

test('every setting can be changed', () => {
  expect(Object.keys(settingsChangeSchema.entries).sort()).toEqual(Object.keys(settingsSchema.entries).sort());
});

test('a bad stored value falls back to its default alone; unknown members are kept', () => {
  const stored = { units: 'furlongs', planSeconds: 20, planSeed: 'x', later: [1] };
  expect(v.parse(settingsSchema, stored)).toEqual({ ...DEFAULT_SETTINGS, planSeconds: 20, later: [1] });
});
