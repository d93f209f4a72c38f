import { create } from 'zustand';
import { err, type Result } from '../../core/base/index.ts';
import {
  type AppInfo,
  type ChannelName,
  DEFAULT_SETTINGS,
  type Host,
  type RequestOf,
  type ResponseOf,
  type Settings,
} from '../../core/contract/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { showError } from './notices.ts';

type HostState = {
  readonly host: Host | null;
  readonly info: AppInfo | null;
  readonly settings: Settings;
  /** Why the host is gone, or null while it is there. */
  readonly lost: string | null;
};

/** The host behind this page, what it can do, and the user's settings. */
export const useHost = create<HostState>(() => ({ host: null, info: null, settings: DEFAULT_SETTINGS, lost: null }));

/** Calls the host. Without one the answer is a failure like any other. */
export async function callHost<Name extends ChannelName>(
  name: Name,
  request: RequestOf<Name>,
): Promise<Result<ResponseOf<Name>>> {
  const { host } = useHost.getState();
  if (host === null) {
    return err(
      'host-lost',
      storesWords.host.program,
      storesWords.host.noConnection,
      storesWords.host.noConnectionAdvice,
    );
  }
  return host.call(name, request);
}

/** Calls the host and shows a failure as a notice; null where it failed. */
export async function askHost<Name extends ChannelName>(
  name: Name,
  request: RequestOf<Name>,
): Promise<ResponseOf<Name> | null> {
  const answer = await callHost(name, request);
  if (answer.ok) return answer.value;
  showError(answer.error);
  return null;
}

/** Changes settings, at once on screen and then at the host. */
export async function changeSettings(changes: RequestOf<'settings.write'>['changes']): Promise<void> {
  useHost.setState(({ settings }) => ({ settings: { ...settings, ...changes } }));
  const written = await askHost('settings.write', { changes });
  if (written !== null) useHost.setState({ settings: written });
}
