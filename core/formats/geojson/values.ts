import type { JsonObject } from './structure.ts';

/** A member as text: strings without outer spaces, numbers as digits; null where there is none or it is empty. */
export function readText(value: unknown): string | null {
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  if (typeof value !== 'string') return null;
  const text = value.trim();
  return text === '' ? null : text;
}

export type NumberReading =
  | { readonly kind: 'absent' }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'bad'; readonly text: string };

/** A number of the properties, written as number or text, between two limits. */
export function readNumber(properties: JsonObject, name: string, least: number, most: number): NumberReading {
  const raw = properties[name];
  if (raw === undefined || raw === null || raw === '') return { kind: 'absent' };
  const value = typeof raw === 'number' ? raw : typeof raw === 'string' ? Number(raw.trim()) : Number.NaN;
  if (Number.isFinite(value) && value >= least && value <= most) return { kind: 'number', value };
  return { kind: 'bad', text: (JSON.stringify(raw) ?? 'nothing').slice(0, 40) };
}
