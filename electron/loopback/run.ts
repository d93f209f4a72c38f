import type { StartWishes } from '../arguments.ts';
import { PROGRAM_VERSION, programPlaces } from '../program.ts';
import { createServices, dataFolder } from '../services/index.ts';
import { loopbackPort } from './port.ts';
import { startServer } from './server.ts';

/** The loopback host as it runs. */
export type LoopbackRun = {
  readonly address: string;
  /** For the command that opens the browser. */
  readonly openingAddress: string;
  readonly close: () => Promise<void>;
};

/**
 * Starts the services and the server for a browser on this machine.
 *
 * @param bundleFolder the folder of the built bundles
 * @returns rejects with the system's error when the port cannot be had
 */
export async function runLoopback(bundleFolder: string, wishes: StartWishes): Promise<LoopbackRun> {
  const places = programPlaces(bundleFolder);
  const services = createServices({
    port: await loopbackPort(),
    version: PROGRAM_VERSION,
    dataFolder: dataFolder(),
    samplesFolder: places.samplesFolder,
    workerFile: places.workerFile,
    groundWorkerFile: places.groundWorkerFile,
    roadsWorkerFile: places.roadsWorkerFile,
    open: wishes.open,
  });
  const server = await startServer(services, places.pageFolder, wishes.port);
  services.log('info', 'loopback', 'started', { port: server.port });
  return {
    address: server.address,
    openingAddress: server.openingAddress,
    close: async () => {
      await server.close();
      await services.close();
    },
  };
}
