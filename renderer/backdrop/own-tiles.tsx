import { useState } from 'react';
import { ok } from '../../core/base/index.ts';
import { readTileTemplate } from '../../core/imagery/index.ts';
import { setOwnTiles, useBackground, useHost } from '../stores/index.ts';
import { backdropWords } from '../texts/index.ts';
import { DraftInput } from '../ui/index.ts';

/** Tiles from an address of the user's own: a county's orthophotos, or a server of theirs. */
export function OwnTiles({ onAsk }: { readonly onAsk: () => void }) {
  const { address, credit } = useHost((state) => state.settings.ownTiles);
  const list = useBackground((state) => state.list);
  const [isOpen, setOpen] = useState(address !== '');
  const take = (text: string) => {
    if (text === '') {
      setOwnTiles('', '').catch(() => undefined);
      return ok(true);
    }
    const read = readTileTemplate(text);
    if (!read.ok) return read;
    if (!list.some(({ asks, allowed }) => allowed && asks === read.value.host)) onAsk();
    setOwnTiles(text, credit).catch(() => undefined);
    return read;
  };
  return (
    <details className="own-tiles" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{backdropWords.tiles.title}</summary>
      <p className="quiet small">{backdropWords.tiles.note}</p>
      <DraftInput
        label={backdropWords.tiles.addressLabel}
        text={address}
        placeholder={backdropWords.tiles.addressPlaceholder}
        onCommit={take}
      />
      <DraftInput
        label={backdropWords.tiles.creditLabel}
        text={credit}
        placeholder={backdropWords.tiles.creditPlaceholder}
        onCommit={(text) => {
          setOwnTiles(address, text).catch(() => undefined);
          return ok(true);
        }}
      />
    </details>
  );
}
