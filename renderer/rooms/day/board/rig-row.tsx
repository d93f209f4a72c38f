import type { Formatter } from '../../../format/index.ts';
import { selectDay } from '../../../stores/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import { Tick } from '../../../ui/index.ts';
import { Block } from './block.tsx';
import type { BoardRow } from './rows.ts';
import { gapsOf, positionOf } from './spots.ts';
import { PlaceTarget, Track } from './track.tsx';
import type { BoardHands } from './use-board-hands.ts';

type RigRowProps = {
  readonly row: BoardRow;
  readonly hours: { readonly startSec: number; readonly endSec: number };
  readonly rows: readonly BoardRow[];
  readonly words: Formatter;
  readonly hands: BoardHands;
  /** The block that the Tab key comes to. */
  readonly activeKey: string;
  readonly selectedKey: string;
  readonly pinnedLawns: ReadonlySet<string>;
  readonly pinned: boolean;
  readonly out: string;
  readonly onPin: (pinned: boolean) => void;
};

/** One rig's day on the board: its stops from left to right in time. */
export function RigRow(props: RigRowProps) {
  const { row, hours, words, hands, pinned, onPin, out, activeKey, selectedKey, pinnedLawns } = props;
  const share = (sec: number): string => `${(100 * (sec - hours.startSec)) / (hours.endSec - hours.startSec)}%`;
  const length = (from: number, to: number): string => `${(100 * (to - from)) / (hours.endSec - hours.startSec)}%`;
  const { carried, over } = hands;
  const gaps = carried === null ? [] : gapsOf(row, carried.stop.key);
  const caret =
    carried === null || over === null || over.kind === 'date' || over.rigId !== row.rigId
      ? undefined
      : gaps[positionOf(over, props.rows, carried.stop.key)];
  const done =
    row.stops.length === 0 ? boardWords.row.noStops : boardWords.row.summary(row.stops.length, words.clock(row.endSec));
  return (
    <li className="board-row" aria-label={`${row.rigName}: ${done}`}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: its tick and its stops take the keys. */}
      <div className="board-rig" data-subject="rig" onContextMenu={() => selectDay(row.date, row.rigId)}>
        <b>{row.rigName}</b>
        <span className="quiet small">{row.rough ? boardWords.row.beingReckoned : done}</span>
        {out !== '' && <span className="small caution">{out}</span>}
        <Tick label={boardWords.row.pinDay(row.rigName)} shown={false} checked={pinned} onChange={onPin} />
      </div>
      <Track rigId={row.rigId} rough={row.rough} hands={hands}>
        {row.spans.map((span) => (
          <span
            key={`${span.kind} ${span.startSec}`}
            className={`board-span board-span-${span.kind}`}
            style={{ left: share(span.startSec), width: length(span.startSec, span.endSec) }}
            title={boardWords.row.span(
              span.kind === 'break' ? boardWords.row.break : boardWords.row.atFillPoint,
              words.clock(span.startSec),
              words.clock(span.endSec),
            )}
          />
        ))}
        {row.stops.map((stop) => (
          <Block
            key={stop.key}
            row={row}
            stop={stop}
            place={{ left: share(stop.startSec), width: length(stop.startSec, stop.endSec) }}
            words={words}
            hands={hands}
            isActive={stop.key === activeKey}
            isSelected={stop.key === selectedKey}
            isPinned={pinnedLawns.has(stop.propertyId)}
          />
        ))}
        {carried?.by === 'keys' &&
          gaps.map((gap) => (
            <PlaceTarget key={gap.position} rigId={row.rigId} gap={gap} left={share(gap.sec)} hands={hands} />
          ))}
        {caret !== undefined && <span className="board-caret" style={{ left: share(caret.sec) }} />}
      </Track>
    </li>
  );
}
