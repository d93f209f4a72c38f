import { useState } from 'react';
import type { Overlay } from '../../core/book/index.ts';
import { pickPixel } from '../stores/index.ts';
import { backdropWords } from '../texts/index.ts';
import { Button } from '../ui/index.ts';

type FrameProps = {
  readonly overlay: Overlay;
  readonly pending: readonly [number, number] | null;
  readonly address: string;
};

const SCALES = [1, 2, 4, 8] as const;
/** Inner height of the frame in the style sheet: at the first scale the whole picture is in it. */
const FRAME_PX = 278;

/** The picture itself, to click points in; it can be looked at closer. Points can be typed below instead. */
export function PictureFrame({ overlay, pending, address }: FrameProps) {
  const [scale, setScale] = useState(0);
  const { widthPx, heightPx, points } = overlay;
  const share = (px: readonly [number, number]) => ({
    left: `${(100 * px[0]) / widthPx}%`,
    top: `${(100 * px[1]) / heightPx}%`,
  });
  return (
    <div className="picture-frame-box">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard. */}
      <section className="picture-frame" aria-label={backdropWords.frame.picture} tabIndex={0}>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: every point can be typed in the table below. */}
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: every point can be typed in the table below. */}
        <div
          className="picture-sheet"
          style={{ width: `calc(min(100%, ${(FRAME_PX * widthPx) / heightPx}px) * ${SCALES[scale] ?? 1})` }}
          onClick={(event) => {
            const box = event.currentTarget.getBoundingClientRect();
            const across = (event.clientX - box.left) / box.width;
            const down = (event.clientY - box.top) / box.height;
            pickPixel([Math.round(across * widthPx * 10) / 10, Math.round(down * heightPx * 10) / 10]);
          }}
        >
          <img src={address} alt={overlay.name} width={widthPx} height={heightPx} draggable={false} />
          {points.map(({ px }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list.
            <span key={index} className="placing-mark" style={share(px)}>
              {index + 1}
            </span>
          ))}
          {pending !== null && <span className="placing-mark placing-pending" style={share(pending)} />}
        </div>
      </section>
      <div className="picture-zoom">
        <Button
          look="quiet"
          label={backdropWords.frame.closer}
          whyNot={scale === SCALES.length - 1 ? backdropWords.frame.closest : null}
          onPress={() => setScale(scale + 1)}
        >
          +
        </Button>
        <Button
          look="quiet"
          label={backdropWords.frame.farther}
          whyNot={scale === 0 ? backdropWords.frame.allShown : null}
          onPress={() => setScale(scale - 1)}
        >
          −
        </Button>
      </div>
    </div>
  );
}
