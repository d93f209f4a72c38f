/** Decimal degrees, also with a decimal comma or a degree sign; null for anything else. */
export function readDegrees(text: string): number | null {
  const tidy = text
    .replace(/\u2212/g, '-')
    .replace(/\u00b0$/, '')
    .trimEnd();
  return /^[+-]?\d{1,9}(?:[.,]\d{1,20})?$/.test(tidy) ? Number(tidy.replace(',', '.')) : null;
}
