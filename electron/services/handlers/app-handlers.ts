import { ok } from '../../../core/base/index.ts';
import { sqliteVersion } from '../store/index.ts';
import type { Context, HandlersOf } from './context.ts';

export function appHandlers(
  context: Context,
): HandlersOf<'app.info' | 'settings.read' | 'settings.write' | 'samples.list'> {
  const { port, settings, samples } = context;
  return {
    'app.info': async () =>
      ok({
        name: 'Swardway',
        version: context.version,
        host: port.host,
        filePicking: port.filePicking,
        makesPdf: port.makesPdf,
        platform: process.platform,
        sqliteVersion: sqliteVersion(),
        openAtStart: context.openAtStart,
      }),
    'settings.read': async () => ok(await settings.read()),
    'settings.write': ({ changes }) => settings.write(changes),
    'samples.list': async () => ok(await samples.list()),
  };
}
