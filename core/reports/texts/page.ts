import { formatDate } from '../../units/index.ts';

/** What stands on pages of every sheet. */
export const PAGE = {
  /** On every sheet and page made of invented data. */
  invented: 'Invented data, not for use',
  program: 'Swardway',
  map: 'Map',
} as const;

/** Why a paper size is refused. */
export const PAPER = {
  place: 'paper size',
  unknown: (text: string) => `"${text}" is no paper that sheets are made for.`,
  choose: (known: readonly string[]) => `Choose ${known.join(' or ')}.`,
} as const;

/** A day of its own, "Tuesday, March 16, 2027". */
export const dateWord = (date: string): string => formatDate(date, 'long');
/** A day in a table, "Tue Mar 16, 2027". */
export const shortDateWord = (date: string): string => formatDate(date, 'table');
