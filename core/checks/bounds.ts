import { type Issue, issue } from '../base/index.ts';
import { formatNumber } from '../units/index.ts';

/** A figure of a record, and between what it is believed. */
export type Figure = {
  /** What it is, as the subject of a sentence: "The tank". */
  readonly what: string;
  /** Absent where the record does not have it. */
  readonly value: number | undefined;
  /** Said after the figure, for instance " gal". */
  readonly unit: string;
  /** Larger ones are hardly meant. */
  readonly most: number;
  /** Smaller ones are hardly meant. */
  readonly least?: number;
};

/** Nobody plans for more at one place, min: 4 h. Our own bound. */
const LONGEST_PAUSE_MIN = 240;
/** Beyond any drench, gal per 1,000 ft2. Our own bound. */
const MOST_CARRIER_GAL_PER_1000_SQ_FT = 20;

/** A warning for each figure that lies outside its bounds. */
export function outOfBounds(where: string, figures: readonly Figure[]): readonly Issue[] {
  return figures.flatMap((figure) => {
    const message = wordsFor(figure);
    return message === null ? [] : [issue('warning', 'figure-absurd', where, message)];
  });
}

function wordsFor({ what, value, unit, most, least = 0 }: Figure): string | null {
  if (value === undefined || (value <= most && value >= least)) return null;
  const bound = value > most ? `more than ${plain(most)}` : `less than ${plain(least)}`;
  return `${what}: ${plain(value)}${unit}. Hardly meant, being ${bound}${unit}; check the figure and its unit.`;
}

/** To hundredths from 1 on, and with commas between the thousands. */
function plain(value: number): string {
  if (value >= 1e15 || value < 1e-6) return String(value);
  const rounded = String(Number(value.toFixed(value < 1 ? 6 : 2)));
  return formatNumber(Number(rounded), rounded.split('.')[1]?.length ?? 0);
}

/** A time in minutes at one place. */
export function pause(what: string, value: number): Figure {
  return { what, value, unit: ' min', most: LONGEST_PAUSE_MIN };
}

/** Pay per hour and person; absent where the book's own holds. */
export function wage(what: string, value: number | undefined): Figure {
  return { what, value, unit: ' dollars an hour', most: 500 };
}

/** What a sprayer delivers or a mix asks for. */
export function carrier(what: string, value: number | undefined): Figure {
  return { what, value, unit: ' gal per 1,000 ft²', most: MOST_CARRIER_GAL_PER_1000_SQ_FT };
}
