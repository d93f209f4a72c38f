import type { HostPort } from '../services/index.ts';
import { findPrinter, printWithChromium } from '../services/printer/index.ts';

/** The browser does the picking and saving itself; PDFs are made by a Chromium of this machine where there is one. */
export async function loopbackPort(): Promise<HostPort> {
  const printer = await findPrinter();
  return {
    host: 'browser',
    filePicking: 'upload',
    makesPdf: printer !== null,
    pickFile: async () => ({ kind: 'upload' }),
    chooseTarget: async () => ({ kind: 'download' }),
    printPdf: (html) => printWithChromium(printer, html),
  };
}
