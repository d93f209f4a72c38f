import { ok } from '../../../core/base/index.ts';
import type { OpenAtStart } from '../../../core/contract/index.ts';
import { sqliteVersion } from '../store/index.ts';
import type { Context, HandlersOf } from './context.ts';
import { diagnostics } from './diagnostics.ts';

export function appHandlers(
  context: Context,
): HandlersOf<'app.info' | 'app.diagnostics' | 'settings.read' | 'settings.write' | 'samples.list'> {
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
        openAtStart: await openAtStart(context),
      }),
    'app.diagnostics': async () => ok({ text: await diagnostics(context) }),
    'settings.read': async () => ok(await settings.read()),
    'settings.write': ({ changes }) => settings.write(changes),
    'samples.list': async () => ok(await samples.list()),
  };
}

/** What to open first: what was asked for, else nothing. */
async function openAtStart({ wanted, samples }: Context): Promise<OpenAtStart | null> {
  if (wanted.kind === 'file') return wanted;
  if (wanted.kind === 'nothing') return null;
  if (wanted.sampleId !== null) return { kind: 'sample', sampleId: wanted.sampleId };
  const [first] = await samples.list();
  return first === undefined ? null : { kind: 'sample', sampleId: first.sampleId };
}
