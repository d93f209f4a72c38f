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
import { backdropWords } from '../texts/index.ts';
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
    <section aria-label={backdropWords.choice.label}>
      <h2>{backdropWords.choice.title}</h2>
      <div className="backdrop-list" role="radiogroup" aria-label={backdropWords.choice.label}>
        <Row
          name="The grid alone"
          note={backdropWords.choice.needsNothing}
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
        <Button onPress={() => openBackgroundFile().catch(() => undefined)}>{backdropWords.choice.openFile}</Button>
        <span className="quiet small">{backdropWords.choice.fileKinds}</span>
      </div>
      <details className="large-tiles">
        <summary>{backdropWords.choice.anySize}</summary>
        <p className="quiet small">{backdropWords.choice.folderNote(folder)}</p>
      </details>
      {chosen !== NO_BACKGROUND && (
        <Strength
          label={backdropWords.choice.strength}
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
    fault?.detail ??
    (asks === null
      ? backdropWords.choice.fileHere
      : allowed
        ? backdropWords.choice.asks(asks)
        : backdropWords.choice.wouldAsk(asks));
  return (
    <Row name={name} note={note} isChosen={isChosen} isFaulty={fault !== null} onChoose={onChoose}>
      {background.bounds !== null && (
        <Button
          look="quiet"
          label={backdropWords.choice.showGroundOf(name)}
          tip={backdropWords.choice.showGround}
          onPress={() => lookAtBackground(background)}
        >
          <Locate size={14} aria-hidden="true" />
        </Button>
      )}
      {kind === 'file' && (
        <Button
          look="quiet"
          label={backdropWords.choice.takeOffOf(name)}
          tip={backdropWords.choice.takeOff}
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
    return <p className="quiet small backdrop-network">{backdropWords.choice.networkOff}</p>;
  }
  return (
    <div className="backdrop-network">
      <p className="small">{backdropWords.choice.networkOn(hosts.join(', '))}</p>
      <Button onPress={() => turnNetworkOff().catch(() => undefined)}>{backdropWords.choice.turnOff}</Button>
    </div>
  );
}
