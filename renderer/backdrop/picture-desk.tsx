import type { Result } from '../../core/base/index.ts';
import type { Overlay } from '../../core/book/index.ts';
import { FIT_KINDS, type FitKind, LEAST_PAIRS, type Placement } from '../../core/imagery/index.ts';
import {
  choosePlacingFit,
  fadePlacing,
  keepPlacing,
  placementOf,
  showError,
  stopPlacing,
  useFormat,
  useOverlays,
} from '../stores/index.ts';
import { backdropWords, commonWords } from '../texts/index.ts';
import { Button, Choice } from '../ui/index.ts';
import { PictureFrame } from './picture-frame.tsx';
import { PicturePoints } from './picture-points.tsx';
import { Strength } from './strength.tsx';

/** Beside the map while a picture is being laid: the picture to choose points in, the points, and how well they fit. */
export function PictureDesk() {
  const placing = useOverlays((state) => state.placing);
  const address = useOverlays((state) => state.address);
  if (placing === null || address === null) return null;
  const { overlay, pending } = placing;
  const placed = placementOf(overlay);
  return (
    <section className="picture-desk" aria-label={backdropWords.desk.layingMap(overlay.name)}>
      <header className="dialog-head">
        <h2>{overlay.name}</h2>
      </header>
      <p className="small" role="status">
        {pending === null
          ? backdropWords.desk.choosePoint
          : backdropWords.desk.samePoint(pending.map(Math.round).join(', '))}
      </p>
      <PictureFrame overlay={overlay} pending={pending} address={address.path + overlay.picture} />
      <PicturePoints overlay={overlay} pending={pending} placed={placed} />
      <Fit overlay={overlay} placed={placed} />
      <Strength label={backdropWords.desk.strength} value={overlay.opacity} onCommit={fadePlacing} />
      <div className="dialog-foot">
        <Button onPress={stopPlacing}>{commonWords.cancel}</Button>
        <Button
          look="main"
          whyNot={placed.ok ? null : placed.error.detail}
          onPress={() => {
            const kept = keepPlacing();
            if (!kept.ok) showError(kept.error);
          }}
        >
          {backdropWords.desk.keep}
        </Button>
      </div>
    </section>
  );
}

const FIT_WORDS: Readonly<Record<FitKind, string>> = {
  similarity: backdropWords.desk.similarity,
  affine: backdropWords.desk.affine,
  projective: backdropWords.desk.projective,
};

function Fit({ overlay, placed }: { readonly overlay: Overlay; readonly placed: Result<Placement> }) {
  const count = overlay.points.length;
  const options = [
    { value: 'auto' as const, words: backdropWords.desk.byPoints },
    ...FIT_KINDS.filter((kind) => count >= LEAST_PAIRS[kind]).map((kind) => ({ value: kind, words: FIT_WORDS[kind] })),
  ];
  return (
    <div className="picture-fit">
      <Choice
        label={backdropWords.desk.bending}
        value={overlay.fit ?? 'auto'}
        options={options}
        onChoose={(value) => choosePlacingFit(value === 'auto' ? null : value)}
      />
      <FitWords placed={placed} />
    </div>
  );
}

/** How well the points agree: only where there are more than just suffice can they disagree. */
function FitWords({ placed }: { readonly placed: Result<Placement> }) {
  const words = useFormat();
  if (!placed.ok) return <p className="small caution">{placed.error.detail}</p>;
  const { fit, rmsFt, pixelFt } = placed.value;
  return (
    <p className="small" role="status">
      {backdropWords.desk.pixelSize(
        FIT_WORDS[fit],
        words.length(pixelFt),
        rmsFt === null ? backdropWords.desk.justEnough : backdropWords.desk.agree(words.length(rmsFt)),
      )}
    </p>
  );
}
