import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { uiWords } from '../texts/index.ts';

type SplitterProps = {
  readonly label: string;
  /** The panel grows when the splitter moves this way. */
  readonly grows: 'right' | 'left' | 'up';
  readonly sizePx: number;
  readonly limits: readonly [number, number];
  readonly folded: boolean;
  readonly controls: string;
  readonly onSize: (sizePx: number) => void;
  readonly onFold: (folded: boolean) => void;
};

const STEP_PX = 16;

/** Along the way that the panel grows, and to fold it. */
export const PANEL_KEYS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Enter'] as const;

/**
 * The line between a panel and the map: dragged with the pointer, moved with arrow keys, folded with Enter or a double click
 * (the window splitter pattern of the WAI-ARIA Authoring Practices).
 */
export function Splitter({ label, grows, sizePx, limits, folded, controls, onSize, onFold }: SplitterProps) {
  const start = useRef<{ readonly at: number; readonly sizePx: number } | null>(null);
  const along = (event: PointerEvent) => (grows === 'up' ? event.clientY : event.clientX);
  const sign = grows === 'right' ? 1 : -1;

  const onPointerMove = (event: PointerEvent<HTMLHRElement>) => {
    if (start.current === null) return;
    onSize(start.current.sizePx + sign * (along(event) - start.current.at));
  };
  const onKeyDown = (event: KeyboardEvent<HTMLHRElement>) => {
    const [less, more] = grows === 'up' ? ['ArrowDown', 'ArrowUp'] : ['ArrowLeft', 'ArrowRight'];
    if (event.key === less) onSize(sizePx - sign * (grows === 'up' ? -STEP_PX : STEP_PX));
    else if (event.key === more) onSize(sizePx + sign * (grows === 'up' ? -STEP_PX : STEP_PX));
    else if (event.key === 'Enter') onFold(!folded);
    else return;
    event.preventDefault();
  };
  return (
    <hr
      className={`splitter splitter-${grows === 'up' ? 'level' : 'upright'}`}
      aria-label={label}
      aria-orientation={grows === 'up' ? 'horizontal' : 'vertical'}
      aria-valuenow={folded ? limits[0] : sizePx}
      aria-valuemin={limits[0]}
      aria-valuemax={limits[1]}
      aria-valuetext={folded ? uiWords.splitter.folded : uiWords.splitter.pixels(sizePx)}
      aria-controls={controls}
      tabIndex={0}
      title={uiWords.splitter.title(label)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        start.current = { at: along(event), sizePx: folded ? limits[0] : sizePx };
      }}
      onPointerMove={onPointerMove}
      onPointerUp={() => {
        start.current = null;
      }}
      onDoubleClick={() => onFold(!folded)}
      onKeyDown={onKeyDown}
    />
  );
}
