import path from 'node:path';
import packageFile from '../package.json' with { type: 'json' };

/** Where the parts of the built program lie, from the folder of its bundles (dist/electron). */
export type ProgramPlaces = {
  readonly pageFolder: string;
  readonly samplesFolder: string;
  readonly workerFile: string;
  readonly groundWorkerFile: string;
  readonly roadsWorkerFile: string;
  readonly preloadFile: string;
};

export const PROGRAM_VERSION: string = packageFile.version;

/** The archive that holds an installed program. */
const ARCHIVE = 'app.asar';

export function programPlaces(bundleFolder: string): ProgramPlaces {
  const top = path.join(bundleFolder, '../..');
  return {
    pageFolder: path.join(bundleFolder, '../renderer'),
    // An installed program has its samples beside the archive: inside it, files have no dates of their own.
    samplesFolder: path.join(top, path.basename(top) === ARCHIVE ? '..' : '', 'sample-routes'),
    workerFile: path.join(bundleFolder, 'plan-worker.cjs'),
    roadsWorkerFile: path.join(bundleFolder, 'roads-worker.cjs'),
    groundWorkerFile: path.join(bundleFolder, 'ground-worker.cjs'),
    preloadFile: path.join(bundleFolder, 'preload.cjs'),
  };
}
