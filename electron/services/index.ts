export { dataFolder } from './files/index.ts';
export type { ChosenPath, Client, FilePurpose, HostPort } from './host-port.ts';
export { type Log, type LogDetail, NO_LOG } from './log/index.ts';
export { createServices, type ServiceOptions, type Services } from './services.ts';
