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
    <section className="picture-desk" aria-label={`Laying ${overlay.name} on the map`}>
      <header className="dialog-head">
        <h2>{overlay.name}</h2>
      </header>
      <p className="small" role="status">
        {pending === null
          ? 'Choose a point in the picture that you can find on the map: a corner of the house, a kerb.'
          : `Now click the same point on the map, or type it below (pixel ${pending.map(Math.round).join(', ')}).`}
      </p>
      <PictureFrame overlay={overlay} pending={pending} address={address.path + overlay.picture} />
      <PicturePoints overlay={overlay} pending={pending} placed={placed} />
      <Fit overlay={overlay} placed={placed} />
      <Strength label="Strength of the picture" value={overlay.opacity} onCommit={fadePlacing} />
      <div className="dialog-foot">
        <Button onPress={stopPlacing}>Leave it</Button>
        <Button
          look="main"
          whyNot={placed.ok ? null : placed.error.detail}
          onPress={() => {
            const kept = keepPlacing();
            if (!kept.ok) showError(kept.error);
          }}
        >
          Keep it here
        </Button>
      </div>
    </section>
  );
}

const FIT_WORDS: Readonly<Record<FitKind, string>> = {
  similarity: 'turned and scaled (a true plan)',
  affine: 'also stretched and slanted (a copied plan)',
  projective: 'also tilted (a photo at a slant)',
};

function Fit({ overlay, placed }: { readonly overlay: Overlay; readonly placed: Result<Placement> }) {
  const count = overlay.points.length;
  const options = [
    { value: 'auto' as const, words: 'as the number of points allows' },
    ...FIT_KINDS.filter((kind) => count >= LEAST_PAIRS[kind]).map((kind) => ({ value: kind, words: FIT_WORDS[kind] })),
  ];
  return (
    <div className="picture-fit">
      <Choice
        label="How the picture may be bent"
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
      {FIT_WORDS[fit]}; a pixel is {words.length(pixelFt)}.{' '}
      {rmsFt === null
        ? 'The points just suffice, so nothing shows whether they are right: add one more to check.'
        : `The points agree to ${words.length(rmsFt)} (root mean square).`}
    </p>
  );
}
