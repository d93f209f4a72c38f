/** What was found where a number was expected. `end` is the position behind it. */
export type NumberRead =
  | { readonly kind: 'number'; readonly value: number; readonly end: number }
  | { readonly kind: 'none' }
  | { readonly kind: 'decimal-comma' }
  | { readonly kind: 'malformed' };

const RUN = /[\d.,]+/y;
const PLAIN = /^(?:\d+\.?\d*|\.\d+)$/;
const THOUSANDS = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?$/;
const SLASH_PART = /\s*\/\s*(\d+)(?![\d.,])/y;
const MIXED_PART = /(?:\s+|-)(\d+)\s*\/\s*(\d+)(?![\d.,])/y;
const VULGAR_PART = /\s*([½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/y;
const VULGAR: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/**
 * Reads one number without sign at a position: "12500", "12,500", "0.25", ".5", "1/2", "1 1/2", "1-1/2", "½", "1½".
 * A comma separates thousands and nothing else: "1,5" is answered with 'decimal-comma', never read as 1.5 or 15.
 */
export function readNumberAt(text: string, start: number): NumberRead {
  const run = matchAt(RUN, text, start);
  if (run === null) return readVulgar(text, start, 0);
  const digits = run[0];
  const end = start + digits.length;
  if (THOUSANDS.test(digits)) return { kind: 'number', value: Number(digits.replaceAll(',', '')), end };
  if (digits.includes(',')) return { kind: 'decimal-comma' };
  if (!PLAIN.test(digits)) return { kind: 'malformed' };
  return /^\d+$/.test(digits)
    ? readFraction(text, end, Number(digits))
    : { kind: 'number', value: Number(digits), end };
}

/** A whole number was read; looks for "/2", " 1/2" or "½" behind it. */
function readFraction(text: string, end: number, whole: number): NumberRead {
  const slash = matchAt(SLASH_PART, text, end);
  if (slash !== null) return divided(0, whole, Number(slash[1]), end + slash[0].length);
  const mixed = matchAt(MIXED_PART, text, end);
  if (mixed !== null) {
    const [over, under] = [Number(mixed[1]), Number(mixed[2])];
    return over < under ? divided(whole, over, under, end + mixed[0].length) : { kind: 'malformed' };
  }
  const vulgar = readVulgar(text, end, whole);
  return vulgar.kind === 'number' ? vulgar : { kind: 'number', value: whole, end };
}

function divided(whole: number, over: number, under: number, end: number): NumberRead {
  return under === 0 ? { kind: 'malformed' } : { kind: 'number', value: whole + over / under, end };
}

function readVulgar(text: string, start: number, whole: number): NumberRead {
  const found = matchAt(VULGAR_PART, text, start);
  const part = found === null ? undefined : VULGAR[found[1] ?? ''];
  if (found === null || part === undefined) return { kind: 'none' };
  return { kind: 'number', value: whole + part, end: start + found[0].length };
}

/** Runs a sticky expression at a position. */
export function matchAt(expression: RegExp, text: string, start: number): RegExpExecArray | null {
  expression.lastIndex = start;
  return expression.exec(text);
}
