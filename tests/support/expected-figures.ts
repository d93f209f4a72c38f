import { readFileSync } from 'node:fs';
import { expect } from 'vitest';

/** Pages of expected figures in sample-routes. */

export function sampleFileText(name: string): string {
  return readFileSync(new URL(`../../sample-routes/${name}`, import.meta.url), 'utf8');
}

export type Figure = { readonly name: string; readonly value: number; readonly tolerance: string };

/** The last table of a page: figure, value, tolerance. */
export function figuresOf(page: string): readonly Figure[] {
  const rows = sampleFileText(page).split('| figure | value | tolerance |')[1] ?? '';
  return rows
    .split('\n')
    .map((row) => row.split('|').map((cell) => cell.trim()))
    .filter((cells) => cells.length === 5 && cells[1] !== '' && !cells[1]?.startsWith('---'))
    .map(([, name = '', value = '', tolerance = '']) => ({ name, value: Number(value), tolerance }));
}

export function checkFigure({ name, value, tolerance }: Figure, found: number): void {
  if (tolerance === 'at least') expect(found, name).toBeGreaterThanOrEqual(value);
  else if (tolerance === 'at most') expect(found, name).toBeLessThanOrEqual(value);
  else
    expect(Math.abs(found - value), `${name}: ${found} against ${value}`).toBeLessThanOrEqual(
      (Number.parseFloat(tolerance) / 100) * value,
    );
}
