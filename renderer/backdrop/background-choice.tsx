import { Locate, Trash2 } from 'lucide-react';
import { type ReactNode, useId } from 'react';
import type { Background } from '../../core/contract/index.ts';
import {
  changeSettings,
  chooseBackground,
  forgetBackground,
  lookAtBackground,
  NO_BACKGROUND,
  openBackgroundFile,
  turnNetworkOff,
  useBackground,
  useHost,
} from '../stores/index.ts';
import { Button } from '../ui/index.ts';
import { OwnTiles } from './own-tiles.tsx';
import { Strength } from './strength.tsx';

type ChoiceProps = {
  /** The user is about to be asked something, so that this panel has to go. */
  readonly onAsk: () => void;
};

/** One background out of those there are, how strong it is, and whether other machines may be asked. */
export function BackgroundChoice({ onAsk }: ChoiceProps) {
  const list = useBackground((state) => state.list);
  const chosen = useHost((state) => state.settings.background);
  const folder = useBackground((state) => state.folder);
  const opacity = useHost((state) => state.settings.backgroundOpacity);
  const choose = (background: Background) => {
    if (background.asks !== null && !background.allowed) onAsk();
    chooseBackground(background.id).catch(() => undefined);
  };
  return (
    <section aria-label="Background">
      <h2>Behind the map</h2>
      <div className="backdrop-list" role="radiogroup" aria-label="Background">
        <Row
          name="The grid alone"
          note="needs nothing"
          isChosen={chosen === NO_BACKGROUND}
          onChoose={() => chooseBackground(NO_BACKGROUND).catch(() => undefined)}
        />
        {list.map((background) => (
          <BackgroundRow
            key={background.id}
            background={background}
            isChosen={chosen === background.id}
            onChoose={() => choose(background)}
          />
        ))}
      </div>
      <div className="backdrop-tools">
        <Button onPress={() => openBackgroundFile().catch(() => undefined)}>Open a file of tiles…</Button>
        <span className="quiet small">MBTiles, PMTiles or GeoTIFF, all without a network</span>
      </div>
      <details className="large-tiles">
        <summary>Files that lie ready, of any size</summary>
        <p className="quiet small">Files of tiles in the folder {folder} are listed here by themselves.</p>
      </details>
      {chosen !== NO_BACKGROUND && (
        <Strength
          label="Strength of the background"
          value={opacity}
          onCommit={(backgroundOpacity) => {
            changeSettings({ backgroundOpacity }).catch(() => undefined);
          }}
        />
      )}
      <OwnTiles onAsk={onAsk} />
      <NetworkState />
    </section>
  );
}

function BackgroundRow({
  background,
  isChosen,
  onChoose,
}: Omit<RowProps, 'name' | 'note'> & { readonly background: Background }) {
  const { id, kind, name, asks, allowed, fault } = background;
  const note =
    fault?.detail ?? (asks === null ? 'a file on this machine' : allowed ? `asks ${asks}` : `would ask ${asks}`);
  return (
    <Row name={name} note={note} isChosen={isChosen} isFaulty={fault !== null} onChoose={onChoose}>
      {background.bounds !== null && (
        <Button
          look="quiet"
          label={`Show the ground of ${name}`}
          tip="Show the ground that it covers"
          onPress={() => lookAtBackground(background)}
        >
          <Locate size={14} aria-hidden="true" />
        </Button>
      )}
      {kind === 'file' && (
        <Button
          look="quiet"
          label={`Take ${name} off the list`}
          tip="Take off the list; the file stays"
          onPress={() => forgetBackground(id).catch(() => undefined)}
        >
          <Trash2 size={14} aria-hidden="true" />
        </Button>
      )}
    </Row>
  );
}

type RowProps = {
  readonly name: string;
  readonly note: string;
  readonly isChosen: boolean;
  readonly isFaulty?: boolean;
  readonly onChoose: () => void;
  readonly children?: ReactNode;
};

function Row({ name, note, isChosen, isFaulty = false, onChoose, children }: RowProps) {
  const noteId = useId();
  return (
    <div className="backdrop-row">
      <label>
        <input
          type="radio"
          name="background"
          checked={isChosen}
          disabled={isFaulty}
          aria-describedby={noteId}
          onChange={onChoose}
        />
        <span className="backdrop-name">{name}</span>
        <span id={noteId} className={`small ${isFaulty ? 'caution' : 'quiet'}`}>
          {note}
        </span>
      </label>
      {children}
    </div>
  );
}

/** Whether anything may leave this machine, in plain words. */
function NetworkState() {
  const network = useHost((state) => state.settings.network);
  const hosts = useHost((state) => state.settings.networkHosts);
  if (network === 'off' || hosts.length === 0) {
    return <p className="quiet small backdrop-network">The network is off: no other machine is asked for anything.</p>;
  }
  return (
    <div className="backdrop-network">
      <p className="small">Pictures may be asked of {hosts.join(', ')}. Nothing else is.</p>
      <Button onPress={() => turnNetworkOff().catch(() => undefined)}>Turn the network off</Button>
    </div>
  );
}
