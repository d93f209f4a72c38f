import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { closePlaces, placeSought, usePlaces } from '../stores/index.ts';
import { addressesWords, commonWords } from '../texts/index.ts';
import { Button } from '../ui/index.ts';
import { NewLawn } from './new-lawn.tsx';
import { SoughtTable } from './sought-table.tsx';
import { StreetFiles } from './street-files.tsx';

/** Places from addresses: street files, a new lawn at an address, and lawns of the book that have an address and no outline. */
export function AddressDialog() {
  const isOpen = usePlaces((state) => state.isOpen);
  const streets = usePlaces((state) => state.streets);
  const sought = usePlaces((state) => state.sought);
  if (!isOpen) return null;
  const ticked = sought.filter(({ chosen }) => chosen).length;
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(open) => !open && closePlaces()}>
      <Modal className="modal">
        <Dialog className="dialog">
          <Heading slot="title">{addressesWords.dialog.title}</Heading>
          <p className="quiet small">{addressesWords.dialog.about}</p>
          <StreetFiles />
          {streets.length > 0 && <NewLawn />}
          {streets.length > 0 && <SoughtTable />}
          <div className="dialog-foot">
            <Button onPress={closePlaces}>{commonWords.close}</Button>
            <Button look="main" whyNot={ticked === 0 ? addressesWords.dialog.noneTicked : null} onPress={placeSought}>
              {ticked === 1 ? addressesWords.dialog.placeOne : addressesWords.dialog.placeSome(ticked)}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
