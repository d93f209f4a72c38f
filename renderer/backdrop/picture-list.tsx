import { PenLine, Trash2 } from 'lucide-react';
import type { Overlay } from '../../core/book/index.ts';
import { adjustPicture, fadeOverlay, removeOverlay, startPicture, useBook, useOverlays } from '../stores/index.ts';
import { Button } from '../ui/index.ts';
import { Strength } from './strength.tsx';

const NONE: readonly Overlay[] = [];

type PictureListProps = { readonly canLay: boolean; readonly onLay: () => void };

/** The photos and plans of the book that are laid on the map. */
export function PictureList({ canLay, onLay }: PictureListProps) {
  const overlays = useBook((state) => state.open?.book.overlays ?? NONE);
  const lost = useOverlays((state) => state.lost);
  if (!canLay && overlays.length === 0) return null;
  return (
    <section aria-label="Photos and plans" className="picture-list">
      <h2>Photos and plans</h2>
      {overlays.map((overlay) => (
        <div key={overlay.id} className="picture-row">
          <span className="picture-name">{overlay.name}</span>
          {canLay && (
            <Button
              look="quiet"
              label={`Move ${overlay.name}`}
              tip="Change its points"
              onPress={() => {
                onLay();
                adjustPicture(overlay);
              }}
            >
              <PenLine size={14} aria-hidden="true" />
            </Button>
          )}
          <Button
            look="quiet"
            label={`Take ${overlay.name} off the map`}
            tip="Take off the map"
            onPress={() => removeOverlay(overlay)}
          >
            <Trash2 size={14} aria-hidden="true" />
          </Button>
          {lost.includes(overlay.id) && (
            <p className="small caution picture-lost">
              The book came without this picture (a JSON copy holds none). Take it off and lay it again.
            </p>
          )}
          <Strength
            label={`Strength of ${overlay.name}`}
            value={overlay.opacity}
            onCommit={(opacity) => fadeOverlay(overlay.id, opacity)}
          />
        </div>
      ))}
      {canLay && (
        <div className="backdrop-tools">
          <Button
            onPress={() => {
              onLay();
              startPicture().catch(() => undefined);
            }}
          >
            Lay a photo or plan on the map…
          </Button>
          <span className="quiet small">PNG or JPEG, up to 20 MB; it goes into the book</span>
        </div>
      )}
    </section>
  );
}
