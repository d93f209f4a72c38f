import { NOTICES } from '../texts/index.ts';
import { fieldValue, type NoticeFacts } from './fields.ts';

/** A text with its fields filled in, and the fields that could not be. */
export type FilledText = {
  readonly text: string;
  /** Names between braces that are no fields; they stand as they were typed. */
  readonly unknown: readonly string[];
  /** Fields that are not known here; the text says so in their place. */
  readonly missing: readonly string[];
};

/** Fills the fields of a text: names in braces, blanks around them and capitals make no difference. */
export function fillText(text: string, facts: NoticeFacts): FilledText {
  const unknown = new Set<string>();
  const missing = new Set<string>();
  const filled = text.replace(/\{([^{}\r\n]{1,60})\}/g, (whole, typed: string) => {
    const name = typed.trim().toLowerCase();
    const value = fieldValue(name, facts);
    if (value === null) {
      unknown.add(typed.trim());
      return whole;
    }
    if (value !== '') return value;
    missing.add(name);
    return NOTICES.missing(name);
  });
  return { text: filled, unknown: [...unknown], missing: [...missing] };
}
