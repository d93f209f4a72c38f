export { findPrinter, printWithChromium, withoutScripts } from './chromium.ts';
