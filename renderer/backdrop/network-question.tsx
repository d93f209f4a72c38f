import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { answerNetwork, useBackground } from '../stores/index.ts';
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
          <Heading slot="title">Use the network?</Heading>
          <p>
            To show {asking.name}, Swardway has to ask <strong>{asking.asks}</strong> for the squares of the map that
            you look at.
          </p>
          <p className="quiet">
            That machine then knows which ground you look at. Your book, addresses and plans are not sent, and no other
            machine is asked. Squares are kept here, at most 200 MB, and shown again without the network. You can turn
            it off at any time.
          </p>
          <div className="dialog-foot">
            <Button onPress={() => answer(false)}>Stay offline</Button>
            <Button look="main" onPress={() => answer(true)}>
              Ask {asking.asks}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
