import { showNews } from '../stores/index.ts';
import { commandsWords } from '../texts/index.ts';

type Printer = () => void;
let printer: Printer | null = null;

/** The paper room says how its sheet is printed while it is on screen. */
export function offerPrinting(print: Printer | null): void {
  printer = print;
}

export function whyNotPrint(): string | null {
  return printer === null ? commandsWords.printing.chooseSheet : null;
}

export function printSheet(): void {
  if (printer === null) showNews(commandsWords.printing.chooseSheet);
  else printer();
}
