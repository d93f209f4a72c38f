/** A decimal number with a point, as files of coordinates write it; null for anything else, also for what overflows. */
export function readDecimal(text: string): number | null {
  if (text.length > 60) return null;
  const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) ? value : null;
}
