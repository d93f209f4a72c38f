import { useState } from 'react';
import { ok } from '../../core/base/index.ts';
import { readTileTemplate } from '../../core/imagery/index.ts';
import { setOwnTiles, useBackground, useHost } from '../stores/index.ts';
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
      <summary>Tiles from an address of my own</summary>
      <p className="quiet small">
        With {'{z}'}, {'{x}'} and {'{y}'} in it. Read the terms of its owner first; some allow other uses only.
      </p>
      <DraftInput label="Address of the tiles" text={address} placeholder="https://…/{z}/{x}/{y}.png" onCommit={take} />
      <DraftInput
        label="Whose pictures they are"
        text={credit}
        placeholder="credit to show on the map"
        onCommit={(text) => {
          setOwnTiles(address, text).catch(() => undefined);
          return ok(true);
        }}
      />
    </details>
  );
}
