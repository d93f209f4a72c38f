export { openInBrowser } from './open-browser.ts';
export { loopbackPort } from './port.ts';
export { type LoopbackRun, runLoopback } from './run.ts';
export { type LoopbackHost, startServer } from './server.ts';
