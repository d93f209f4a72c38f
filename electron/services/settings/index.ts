export { type JsonFile, jsonFile } from './json-file.ts';
export { createRecentStore, type RecentEntry, type RecentStore } from './recent-store.ts';
export { createSettingsStore, type SettingsStore } from './settings-store.ts';
