import { startInBrowser } from '../start-browser.ts';

/** The loopback host alone, without looking for Electron. */
void startInBrowser(__dirname, process.argv.slice(2));
