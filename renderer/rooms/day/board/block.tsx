import { type DragEvent, useRef } from 'react';
import { useDrag } from 'react-aria-components';
import type { Formatter } from '../../../format/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import { commonWords } from '../../../texts/index.ts';
import type { BoardRow, BoardStop } from './rows.ts';
import { STOP_TYPE } from './spots.ts';
import type { BoardHands } from './use-board-hands.ts';

type BlockProps = {
  readonly row: BoardRow;
  readonly stop: BoardStop;
  readonly place: { readonly left: string; readonly width: string };
  readonly words: Formatter;
  readonly hands: BoardHands;
  readonly isActive: boolean;
  readonly isSelected: boolean;
  readonly isPinned: boolean;
};

/** A stop on the board, to be pressed and carried. */
export function Block({ row, stop, place, words, hands, isActive, isSelected, isPinned }: BlockProps) {
  const byPointer = useRef(false);
  const { dragProps } = useDrag({
    getItems: () => [{ [STOP_TYPE]: stop.key }],
    getAllowedDropOperations: () => ['move'],
    onDragStart: () => hands.onCarry(row, stop, byPointer.current ? 'pointer' : 'keys'),
    onDragEnd: hands.onCarryEnd,
  });
  const touch = hands.touch.handlers(stop.key);
  const isHeld = hands.carried?.stop.key === stop.key;
  const looks = [
    'board-stop',
    ...(isSelected ? ['board-stop-selected'] : []),
    ...(isHeld ? ['board-stop-held'] : []),
    ...(isPinned ? ['board-stop-pinned'] : []),
  ];
  const times = row.rough
    ? boardWords.block.beingReckoned
    : commonWords.span(words.clock(stop.startSec), words.clock(stop.endSec));
  return (
    <button
      type="button"
      className={looks.join(' ')}
      style={place}
      data-stop={stop.key}
      data-subject="stop"
      onContextMenu={() => hands.onPress(row, stop)}
      tabIndex={isActive ? 0 : -1}
      title={`${commonWords.stop(stop.number, stop.name)}, ${times}`}
      aria-label={`${commonWords.stop(stop.number, stop.name)}, ${row.rigName}, ${times}${isPinned ? boardWords.block.pinned : ''}`}
      {...dragProps}
      {...touch}
      onDragStart={(event: DragEvent<HTMLElement>) => {
        if (hands.touch.isOn()) {
          event.preventDefault();
          return;
        }
        byPointer.current = true;
        dragProps.onDragStart?.(event);
        byPointer.current = false;
      }}
      onPointerDown={(event) => {
        touch.onPointerDown(event);
        // React Aria takes a press at the very middle for that of a screen reader, which a mouse may hit too.
        if (event.pointerType !== 'mouse') dragProps.onPointerDown?.(event);
      }}
      onClick={(event) => {
        dragProps.onClick?.(event);
        // A finger's press is told when it is lifted.
        if (!event.defaultPrevented && !isTouch(event.nativeEvent)) hands.onPress(row, stop);
      }}
      onKeyDown={(event) => hands.onKey(event, row, stop)}
      onKeyUp={(event) => event.key === ' ' && event.preventDefault()}
    >
      <b>{stop.number}</b> <span className="board-name">{stop.name}</span>
    </button>
  );
}

function isTouch(event: Event): boolean {
  return 'pointerType' in event && event.pointerType === 'touch';
}
