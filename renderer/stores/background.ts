import { create } from 'zustand';
import type { AppError } from '../../core/base/index.ts';
import type { Background } from '../../core/contract/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { useBook } from './book.ts';
import { pickFile } from './files.ts';
import { askHost, callHost, changeSettings, useHost } from './host.ts';
import { say } from './notices.ts';

export const NO_BACKGROUND = 'none';

type BackgroundState = {
  readonly list: readonly Background[];
  /** Where files of tiles are found by themselves. */
  readonly folder: string;
  /** Ground that the map is asked to show; a larger count asks anew. */
  readonly lookAt: { readonly count: number; readonly bounds: NonNullable<Background['bounds']> } | null;
  /** The background whose machine the user is asked about; null while nothing is asked. */
  readonly asking: Background | null;
  /** Tiles in view that did not come, and why the newest did not. */
  readonly missing: number;
  readonly trouble: AppError | null;
  /** Counts the wishes to load tiles anew. */
  readonly turn: number;
};

/** What can lie behind the map, and how it fares. */
export const useBackground = create<BackgroundState>(() => ({
  list: [],
  folder: '',
  lookAt: null,
  asking: null,
  missing: 0,
  trouble: null,
  turn: 0,
}));

export async function loadBackgrounds(): Promise<void> {
  const answer = await callHost('background.list', {});
  if (answer.ok) useBackground.setState({ list: answer.value.backgrounds, folder: answer.value.folder });
}

/** Shows a background. One that has to ask another machine is shown when the user has allowed that. */
export async function chooseBackground(id: string): Promise<void> {
  const background = useBackground.getState().list.find((each) => each.id === id);
  if (background !== undefined && background.asks !== null && !background.allowed) {
    useBackground.setState({ asking: background });
    return;
  }
  await showBackground(id);
}

async function showBackground(id: string): Promise<void> {
  useBackground.setState({ missing: 0, trouble: null });
  await changeSettings({ background: id });
  const name = useBackground.getState().list.find((each) => each.id === id)?.name;
  say(name === undefined ? storesWords.background.none : storesWords.background.chosen(name));
}

/** The user's answer to the question whether a machine may be asked. After a no everything stays as it was. */
export async function answerNetwork(yes: boolean): Promise<void> {
  const { asking } = useBackground.getState();
  useBackground.setState({ asking: null });
  if (asking === null || asking.asks === null || !yes) return;
  const { networkHosts } = useHost.getState().settings;
  const hosts = [...new Set([...networkHosts, asking.asks])];
  await changeSettings({ network: 'allowed', networkHosts: hosts });
  await loadBackgrounds();
  await showBackground(asking.id);
  loadTilesAnew();
}

/** From now on nothing is asked of any machine; what was fetched is still shown. */
export async function turnNetworkOff(): Promise<void> {
  await changeSettings({ network: 'off', networkHosts: [] });
  await loadBackgrounds();
  loadTilesAnew();
}

export function loadTilesAnew(): void {
  useBackground.setState(({ turn }) => ({ turn: turn + 1, missing: 0, trouble: null }));
}

export async function openBackgroundFile(): Promise<void> {
  const picked = await pickFile('background');
  const opened = picked === null ? null : await askHost('background.open', { token: picked.token });
  if (opened === null) return;
  await loadBackgrounds();
  await showBackground(opened.id);
  if ((useBook.getState().open?.book.properties.length ?? 0) === 0) lookAtBackground(opened);
}

/** Moves the map to the ground that a file of tiles covers. */
export function lookAtBackground({ bounds }: Background): void {
  if (bounds !== null)
    useBackground.setState(({ lookAt }) => ({ lookAt: { count: (lookAt?.count ?? 0) + 1, bounds } }));
}

export async function forgetBackground(backgroundId: string): Promise<void> {
  if (useHost.getState().settings.background === backgroundId) await showBackground(NO_BACKGROUND);
  await askHost('background.forget', { backgroundId });
  await loadBackgrounds();
}

/** Takes an address of the user's own tiles; an empty one takes them away. */
export async function setOwnTiles(address: string, credit: string): Promise<void> {
  const before = useHost.getState().settings.ownTiles.address;
  await changeSettings({ ownTiles: { address, credit } });
  await loadBackgrounds();
  if (address === before) return;
  if (address !== '') await chooseBackground('own');
  else if (useHost.getState().settings.background === 'own') await showBackground(NO_BACKGROUND);
}

/** Asks the host why tiles did not come. */
export async function tilesMissing(backgroundId: string, missing: number): Promise<void> {
  if (missing === 0) {
    useBackground.setState({ missing: 0, trouble: null });
    return;
  }
  const answer = await callHost('background.trouble', { backgroundId });
  useBackground.setState({ missing, trouble: answer.ok ? answer.value.trouble : answer.error });
}
