import { build, Platform } from 'electron-builder';
import { packaging } from './config.ts';

/**
 * Packages the built program for the system it runs on: the SQLite driver has a binary for that one alone.
 *
 *   npm run package                        installers, in dist/package
 *   npm run package -- --folder            only the folder that they would install
 *   npm run package -- --folder --electron FOLDER   with this Electron instead of a fetched one
 */
const words = process.argv.slice(2);
const at = words.indexOf('--electron');
const electronDist = at >= 0 ? words[at + 1] : undefined;

await build({
  targets: Platform.current().createTarget(words.includes('--folder') ? 'dir' : null),
  config: { ...packaging, ...(electronDist === undefined ? {} : { electronDist }) },
});
