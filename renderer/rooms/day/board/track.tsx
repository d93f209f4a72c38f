import { type ReactNode, useRef } from 'react';
import { useDrop } from 'react-aria-components';
import { type Gap, type Spot, STOP_TYPE } from './spots.ts';
import { type BoardHands, placeName } from './use-board-hands.ts';

type TrackProps = {
  readonly rigId: string;
  readonly rough: boolean;
  readonly hands: BoardHands;
  readonly children: ReactNode;
};

/** The row of a rig in time: a stop that is carried by mouse can be dropped anywhere on it. */
export function Track({ rigId, rough, hands, children }: TrackProps) {
  const ref = useRef<HTMLDivElement>(null);
  const spotAt = (x: number): Spot => ({
    kind: 'moment',
    rigId,
    share: x / Math.max(1, ref.current?.offsetWidth ?? 1),
  });
  const { dropProps } = useDrop({
    ref,
    getDropOperation: (types) => (types.has(STOP_TYPE) && hands.carried?.by !== 'keys' ? 'move' : 'cancel'),
    onDropEnter: ({ x }) => hands.onOver(spotAt(x)),
    onDropMove: ({ x }) => hands.onOver(spotAt(x)),
    onDropExit: () => hands.onLeave(spotAt(0)),
    onDrop: ({ x }) => hands.onDrop(spotAt(x)),
  });
  return (
    <div {...dropProps} ref={ref} className={`board-track${rough ? ' board-track-rough' : ''}`} data-rig={rigId}>
      {children}
    </div>
  );
}

type PlaceProps = {
  readonly rigId: string;
  readonly gap: Gap;
  readonly left: string;
  readonly hands: BoardHands;
};

/** A place between two stops, to be reached from the keyboard while a stop is carried. */
export function PlaceTarget({ rigId, gap, left, hands }: PlaceProps) {
  const ref = useRef<HTMLButtonElement>(null);
  const spot = { kind: 'place', rigId, position: gap.position } as const;
  const { dropProps } = useDrop({
    ref,
    getDropOperation: () => 'move',
    onDropEnter: () => hands.onOver(spot),
    onDropExit: () => hands.onLeave(spot),
    onDrop: () => hands.onDrop(spot),
  });
  return (
    <button
      {...dropProps}
      ref={ref}
      type="button"
      className="board-place"
      style={{ left }}
      aria-label={gap.words}
      data-place={placeName(rigId, gap.position)}
    />
  );
}
