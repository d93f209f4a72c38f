import type { KeyboardEvent, PointerEvent } from 'react';
import type { Formatter } from '../../../format/index.ts';
import { counted } from '../../../format/index.ts';
import { Tick } from '../../../ui/index.ts';
import type { BoardRow, BoardStop } from './rows.ts';

export type BlockHands = {
  readonly handlers: (key: string) => {
    readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerCancel: () => void;
  };
  readonly onPress: (row: BoardRow, stop: BoardStop) => void;
  readonly onKey: (event: KeyboardEvent, row: BoardRow, stop: BoardStop) => void;
};

type RigRowProps = {
  readonly row: BoardRow;
  readonly hours: { readonly startSec: number; readonly endSec: number };
  readonly words: Formatter;
  readonly hands: BlockHands;
  /** The block that the Tab key comes to. */
  readonly activeKey: string;
  readonly selectedKey: string;
  readonly heldKey: string;
  /** Share of the row at which a dragged block would be dropped; null for none. */
  readonly caret: number | null;
  readonly pinnedLawns: ReadonlySet<string>;
  readonly pinned: boolean;
  readonly out: string;
  readonly onPin: (pinned: boolean) => void;
};

/** One rig's day on the board: its stops from left to right in time. */
export function RigRow(props: RigRowProps) {
  const { row, hours, words, hands, caret, pinned, onPin, out } = props;
  const share = (sec: number): string => `${(100 * (sec - hours.startSec)) / (hours.endSec - hours.startSec)}%`;
  const length = (from: number, to: number): string => `${(100 * (to - from)) / (hours.endSec - hours.startSec)}%`;
  const done =
    row.stops.length === 0 ? 'no stops' : `${counted(row.stops.length, 'stop')}, done ${words.clock(row.endSec)}`;
  return (
    <li className="board-row" aria-label={`${row.rigName}: ${done}`}>
      <div className="board-rig">
        <b>{row.rigName}</b>
        <span className="quiet small">{row.rough ? 'being reckoned …' : done}</span>
        {out !== '' && <span className="small caution">{out}</span>}
        <Tick label={`pin this day of ${row.rigName}`} shown={false} checked={pinned} onChange={onPin} />
      </div>
      <div className={`board-track${row.rough ? ' board-track-rough' : ''}`} data-rig={row.rigId}>
        {row.spans.map((span) => (
          <span
            key={`${span.kind} ${span.startSec}`}
            className={`board-span board-span-${span.kind}`}
            style={{ left: share(span.startSec), width: length(span.startSec, span.endSec) }}
            title={`${span.kind === 'break' ? 'Break' : 'At a fill point'}, ${words.clock(span.startSec)} to ${words.clock(span.endSec)}`}
          />
        ))}
        {row.stops.map((stop) => (
          <Block
            key={stop.key}
            {...props}
            stop={stop}
            place={{ left: share(stop.startSec), width: length(stop.startSec, stop.endSec) }}
            hands={hands}
          />
        ))}
        {caret !== null && <span className="board-caret" style={{ left: `${100 * caret}%` }} />}
      </div>
    </li>
  );
}

type BlockProps = RigRowProps & {
  readonly stop: BoardStop;
  readonly place: { readonly left: string; readonly width: string };
};

function Block({ row, stop, place, words, hands, activeKey, selectedKey, heldKey, pinnedLawns }: BlockProps) {
  const isPinned = pinnedLawns.has(stop.propertyId);
  const looks = [
    'board-stop',
    ...(stop.key === selectedKey ? ['board-stop-selected'] : []),
    ...(stop.key === heldKey ? ['board-stop-held'] : []),
    ...(isPinned ? ['board-stop-pinned'] : []),
  ];
  const times = row.rough ? 'times being reckoned' : `${words.clock(stop.startSec)} to ${words.clock(stop.endSec)}`;
  return (
    <button
      type="button"
      className={looks.join(' ')}
      style={place}
      data-stop={stop.key}
      tabIndex={stop.key === activeKey ? 0 : -1}
      title={`${stop.number} ${stop.name}, ${times}`}
      aria-label={`${stop.number} ${stop.name}, ${row.rigName}, ${times}${isPinned ? ', pinned' : ''}`}
      aria-pressed={stop.key === heldKey}
      onClick={() => hands.onPress(row, stop)}
      onKeyDown={(event) => hands.onKey(event, row, stop)}
      {...hands.handlers(stop.key)}
    >
      <b>{stop.number}</b> <span className="board-name">{stop.name}</span>
    </button>
  );
}
