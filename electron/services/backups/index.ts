export { type Backups, type BookNow, createBackups } from './backups.ts';
