import { useEffect, useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { Place, TaskName } from '../../../../core/plan/board/index.ts';
import type { Plan } from '../../../../core/plan/result/index.ts';
import { askBoard, useFormat } from '../../../stores/index.ts';
import { boardWords } from '../../../texts/day/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { Button } from '../../../ui/index.ts';

type PlacesDialogProps = {
  readonly plan: Plan;
  readonly task: TaskName;
  readonly name: string;
  readonly onChoose: (place: Place) => void;
  readonly onClose: () => void;
};

/** The cheapest places for a lawn, in words, to choose from. */
export function PlacesDialog({ plan, task, name, onChoose, onClose }: PlacesDialogProps) {
  const [places, setPlaces] = useState<readonly Place[] | null>(null);
  const words = useFormat();
  useEffect(() => {
    let isWanted = true;
    void askBoard(plan, { kind: 'places', task }).then((reply) => {
      if (isWanted) setPlaces(reply?.kind === 'places' ? reply.places : []);
    });
    return () => {
      isWanted = false;
    };
  }, [plan, task]);
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(isOpen) => !isOpen && onClose()}>
      <Modal className="modal">
        <Dialog className="dialog">
          <div className="dialog-head">
            <Heading slot="title">{boardWords.places.title(name)}</Heading>
            <Button look="quiet" onPress={onClose}>
              {commonWords.close}
            </Button>
          </div>
          {places === null && <p className="quiet">{boardWords.places.looking}</p>}
          {places?.length === 0 && <p>{boardWords.places.noPlace}</p>}
          {places !== null && places.length > 0 && (
            <ul className="board-places" aria-label={boardWords.places.listLabel(name)}>
              {places.map((place) => (
                <li key={`${place.date} ${place.rigId} ${place.position}`}>
                  <button type="button" className="row-button" onClick={() => onChoose(place)}>
                    {words.date(place.date)}, {place.words}
                  </button>
                </li>
              ))}
            </ul>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
