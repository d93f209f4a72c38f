import { fahrenheit } from '../../units/index.ts';

/** Fahrenheit or Celsius. */
export type DegreeUnit = 'F' | 'C';

/** In which unit the figures of some columns are. */
export type UnitGuess = {
  /** Null where it has to be asked. */
  readonly unit: DegreeUnit | null;
  /** What the header says; null where it says nothing, or two things. */
  readonly stated: DegreeUnit | null;
  /** Why it is asked, or how it is known: one sentence. */
  readonly why: string;
};

/** Figures no higher than this look like Celsius; temperatures above it cannot be Celsius. */
const HIGHEST_CELSIUS = 50;
/** A few figures that are out of place do not count. */
const NEARLY_ALL = 0.95;

/** The unit that the name of a column states, or null. */
export function statedUnit(column: string): DegreeUnit | null {
  if (/fahrenheit/i.test(column)) return 'F';
  if (/celsius|centigrade/i.test(column)) return 'C';
  // "tempMaxF"
  const [, capital] = /[a-z0-9]([FC])$/.exec(column) ?? [];
  if (capital !== undefined) return capital === 'F' ? 'F' : 'C';
  const [, letter] = /(?:°\s*|deg(?:rees?)?[\s_.]*|[([_\s,])([fc])(?:[)\]\s.,]|$)/i.exec(column) ?? [];
  return letter === undefined ? null : letter.toUpperCase() === 'F' ? 'F' : 'C';
}

/**
 * The unit of columns from their names and figures. It has to be asked where no name states it, where two names state different
 * ones, and where the figures do not look like what is stated.
 */
export function guessUnit(columns: readonly string[], figures: readonly number[]): UnitGuess {
  const all = [...new Set(columns.flatMap((each) => statedUnit(each) ?? []))];
  const stated = all.length === 1 ? (all[0] ?? null) : null;
  const inOrder = figures.toSorted((left, right) => left - right);
  const top = inOrder[Math.ceil(NEARLY_ALL * (inOrder.length - 1))] ?? 0;
  const looks = top <= HIGHEST_CELSIUS ? 'C' : 'F';
  const seen = `nearly all figures are at most ${top}`;
  if (all.length > 1) return { unit: null, stated: null, why: 'The columns name different units.' };
  if (figures.length === 0) return { unit: stated ?? 'F', stated, why: 'There are no figures.' };
  if (stated === null) {
    const hint = looks === 'C' ? 'that looks like Celsius' : 'that looks like Fahrenheit';
    return { unit: null, stated, why: `The file does not say its unit; ${seen}, and ${hint}.` };
  }
  if (stated === looks) return { unit: stated, stated, why: 'So the header says.' };
  const [says, rather] = stated === 'F' ? ['Fahrenheit', 'Celsius'] : ['Celsius', 'Fahrenheit'];
  return { unit: null, stated, why: `The header says ${says}, but ${seen}; that looks like ${rather}.` };
}

/** A figure of a cell: not there, not readable, or a number with the unit that stands beside it. */
export type CellFigure =
  | { readonly kind: 'none' }
  | { readonly kind: 'unreadable' }
  | { readonly kind: 'figure'; readonly value: number; readonly unit: DegreeUnit | null };

/** What stands for "not read" in files of stations. */
const MISSING =
  /^(?:|-+|\.|m|na|n\/a|nan|null|none|missing|-99(?:\.0+)?|-99\.9+|-999(?:\.\d+)?|-9999(?:\.\d+)?|9999(?:\.\d+)?)$/i;

export function readFigure(text: string): CellFigure {
  const tidy = text.trim().replace(/[\u2212\u2013]/g, '-');
  if (MISSING.test(tidy)) return { kind: 'none' };
  const [, figure, unit] = /^([-+]?(?:\d{1,4}(?:[.,]\d+)?|\.\d+))\s*(?:°|deg)?\s*([fc])?$/i.exec(tidy) ?? [];
  if (figure === undefined) return { kind: 'unreadable' };
  const scale = unit === undefined ? null : unit.toUpperCase() === 'F' ? 'F' : 'C';
  return { kind: 'figure', value: Number(figure.replace(',', '.')), unit: scale };
}

/** A figure in F, rounded to a hundredth, so that Celsius leaves no tails of digits. */
export function toFahrenheit(value: number, unit: DegreeUnit): number {
  return unit === 'F' ? value : Math.round(fahrenheit(value) * 100) / 100;
}
