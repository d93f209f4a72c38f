/**
 * A figure with thousands separated by commas and a fixed number of decimals, so that columns line up with tabular digits:
 * (1234.5, 1) -> "1,234.5". Never "-0". A figure that is not finite gives an en dash.
 */
export function formatNumber(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) return '–';
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole = '0', rest] = fixed.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  const sign = value < 0 && /[1-9]/.test(fixed) ? '-' : '';
  return rest === undefined ? sign + grouped : `${sign}${grouped}.${rest}`;
}

/** Decimals that leave about three figures: 2 under 10, 1 under 100, none from there on. */
export function decimalsFor(value: number): number {
  const size = Math.abs(value);
  if (size < 9.995) return 2;
  return size < 99.95 ? 1 : 0;
}

/** The figure without zeros at its end: "12.50" -> "12.5", "12.00" -> "12". */
export function withoutTrailingZeros(figure: string): string {
  return figure.includes('.') ? figure.replace(/\.?0+$/, '') : figure;
}
