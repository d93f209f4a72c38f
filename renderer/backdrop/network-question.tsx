import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { answerNetwork, useBackground } from '../stores/index.ts';
import { backdropWords } from '../texts/index.ts';
import { Button } from '../ui/index.ts';

/** Asked once for each machine, before anything is asked of it. */
export function NetworkQuestion() {
  const asking = useBackground((state) => state.asking);
  if (asking === null) return null;
  const answer = (yes: boolean) => {
    answerNetwork(yes).catch(() => undefined);
  };
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(isOpen) => !isOpen && answer(false)}>
      <Modal className="modal modal-narrow">
        <Dialog className="dialog">
          <Heading slot="title">{backdropWords.network.title}</Heading>
          <p>
            {backdropWords.network.toShow(asking.name)} <strong>{asking.asks}</strong> {backdropWords.network.squares}
          </p>
          <p className="quiet">{backdropWords.network.privacy}</p>
          <div className="dialog-foot">
            <Button onPress={() => answer(false)}>{backdropWords.network.stayOffline}</Button>
            <Button look="main" onPress={() => answer(true)}>
              {backdropWords.network.ask(asking.asks ?? '')}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
