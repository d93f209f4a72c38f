import { beforeEach, describe, expect, it } from 'vitest';
import { err, ok } from '../../../core/base/index.ts';
import { type Background, DEFAULT_SETTINGS, type Settings } from '../../../core/contract/index.ts';
import {
  answerNetwork,
  chooseBackground,
  loadBackgrounds,
  setOwnTiles,
  tilesMissing,
  turnNetworkOff,
  useBackground,
  useHost,
} from '../../../renderer/stores/index.ts';
import { type FakeHost, installFakeHost } from '../fake-host.ts';

const AERIAL: Background = {
  id: 'aerial',
  kind: 'online',
  name: 'Aerial',
  credit: 'somebody',
  asks: 'tiles.example.org',
  allowed: false,
  address: '/tiles/k/aerial/{z}/{x}/{y}',
  leastZoom: 3,
  mostZoom: 20,
  tilePx: 256,
  bounds: null,
  fault: null,
};
let host: FakeHost;
let stored: Settings;

beforeEach(() => {
  host = installFakeHost();
  stored = DEFAULT_SETTINGS;
  useHost.setState({ settings: DEFAULT_SETTINGS });
  useBackground.setState({ list: [], folder: '', lookAt: null, asking: null, missing: 0, trouble: null, turn: 0 });
  host.answer('settings.write', ({ changes }: { readonly changes: Partial<Settings> }) => {
    stored = { ...stored, ...changes };
    return ok(stored);
  });
  host.answer('background.list', () =>
    ok({
      folder: '~/backgrounds',
      backgrounds: [
        { ...AERIAL, allowed: stored.network === 'allowed' && stored.networkHosts.includes('tiles.example.org') },
      ],
    }),
  );
});

describe('a background that has to ask another machine', () => {
  it('is asked about first; no leaves everything as it was', async () => {
    await loadBackgrounds();
    await chooseBackground('aerial');
    expect(useBackground.getState().asking?.id).toBe('aerial');
    expect(stored).toEqual(DEFAULT_SETTINGS);
    await answerNetwork(false);
    expect(useBackground.getState().asking).toBeNull();
    expect(stored).toEqual(DEFAULT_SETTINGS);
  });

  it('is shown after a yes, which is kept and not asked for again', async () => {
    await loadBackgrounds();
    await chooseBackground('aerial');
    await answerNetwork(true);
    expect(stored).toMatchObject({ network: 'allowed', networkHosts: ['tiles.example.org'], background: 'aerial' });
    await chooseBackground('none');
    await chooseBackground('aerial');
    expect(useBackground.getState().asking).toBeNull();
    expect(stored.background).toBe('aerial');
  });

  it('is asked about again after the network was turned off; tiles are loaded anew', async () => {
    await loadBackgrounds();
    await chooseBackground('aerial');
    await answerNetwork(true);
    const before = useBackground.getState().turn;
    await turnNetworkOff();
    expect(stored).toMatchObject({ network: 'off', networkHosts: [] });
    expect(useBackground.getState().turn).toBeGreaterThan(before);
    await chooseBackground('aerial');
    expect(useBackground.getState().asking?.id).toBe('aerial');
  });
});

describe('tiles that do not come', () => {
  it('are counted with the newest reason, until all come again', async () => {
    const trouble = err('not-available', 'tiles.example.org', 'It cannot be reached.', '').error;
    host.answer('background.trouble', () => ok({ trouble }));
    await tilesMissing('aerial', 3);
    expect(useBackground.getState()).toMatchObject({ missing: 3, trouble });
    await tilesMissing('aerial', 0);
    expect(useBackground.getState()).toMatchObject({ missing: 0, trouble: null });
  });
});

describe('tiles of an own address', () => {
  it('are chosen when the address is new, not when the credit changes, and go with it', async () => {
    host.answer('background.list', () =>
      ok({ folder: '', backgrounds: stored.ownTiles.address === '' ? [] : [{ ...AERIAL, id: 'own', allowed: true }] }),
    );
    await setOwnTiles('https://tiles.example.org/{z}/{x}/{y}', '');
    expect(stored.background).toBe('own');
    await chooseBackground('none');
    await setOwnTiles('https://tiles.example.org/{z}/{x}/{y}', 'ours');
    expect(stored.background).toBe('none');
    await chooseBackground('own');
    await setOwnTiles('', '');
    expect(stored.background).toBe('none');
  });
});
