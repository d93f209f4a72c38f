import { showNews } from '../stores/index.ts';

type Printer = () => void;
let printer: Printer | null = null;

/** The paper room says how its sheet is printed while it is on screen. */
export function offerPrinting(print: Printer | null): void {
  printer = print;
}

export function whyNotPrint(): string | null {
  return printer === null ? 'Choose a sheet in the Paper room first' : null;
}

export function printSheet(): void {
  if (printer === null) showNews('Choose a sheet in the Paper room first');
  else printer();
}
