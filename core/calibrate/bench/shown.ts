import { formatNumber } from '../../units/index.ts';

/** A figure with five significant places, thousands separated: "14.85", "0.26936", "158,400". */
export function shown(value: number): string {
  if (value === 0 || Math.abs(value) >= 1e5) return formatNumber(value);
  if (Math.abs(value) < 1e-4) return String(Number(value.toPrecision(3)));
  const decimals = Math.max(0, 4 - Math.floor(Math.log10(Math.abs(value))));
  const fixed = formatNumber(value, decimals);
  return fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
}

/** "14.85 gal/acre", "6 tips", "0.7" for a share. */
export function shownWithUnit(value: number, unit: string): string {
  return unit === '' || unit === 'share' ? shown(value) : `${shown(value)} ${unit}`;
}

/** A share as a percentage with one decimal: "5.9 %". */
export function percent(share: number): string {
  return `${formatNumber(100 * share, 1)} %`;
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each, 0) / values.length;
}
