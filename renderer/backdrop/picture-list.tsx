import { PenLine, Trash2 } from 'lucide-react';
import type { Overlay } from '../../core/book/index.ts';
import { adjustPicture, fadeOverlay, removeOverlay, startPicture, useBook, useOverlays } from '../stores/index.ts';
import { backdropWords } from '../texts/index.ts';
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
    <section aria-label={backdropWords.list.label} className="picture-list">
      <h2>{backdropWords.list.label}</h2>
      {overlays.map((overlay) => (
        <div key={overlay.id} className="picture-row">
          <span className="picture-name">{overlay.name}</span>
          {canLay && (
            <Button
              look="quiet"
              label={backdropWords.list.moveOf(overlay.name)}
              tip={backdropWords.list.changePoints}
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
            label={backdropWords.list.takeOff(overlay.name)}
            tip={backdropWords.list.takeOffTip}
            onPress={() => removeOverlay(overlay)}
          >
            <Trash2 size={14} aria-hidden="true" />
          </Button>
          {lost.includes(overlay.id) && <p className="small caution picture-lost">{backdropWords.list.missing}</p>}
          <Strength
            label={backdropWords.list.strengthOf(overlay.name)}
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
            {backdropWords.list.lay}
          </Button>
          <span className="quiet small">{backdropWords.list.layNote}</span>
        </div>
      )}
    </section>
  );
}
