import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { closeImport, useImport } from '../../stores/index.ts';
import { importWords } from '../../texts/app/index.ts';
import { Button } from '../../ui/index.ts';
import { GroundImportSheet } from './ground-import.tsx';
import { MatrixImportSheet } from './matrix-import.tsx';
import { TemperatureImportSheet } from './temperature-import.tsx';
import { Working } from './working.tsx';

/** What a file would change, before it does. Each kind is a dialog of its own, which takes the focus when it opens. */
export function ImportDialog() {
  const current = useImport((state) => state.current);
  switch (current.kind) {
    case 'none':
      return null;
    case 'reading':
      return (
        <Frame key="reading" title={current.fileName} narrow>
          <Working step={importWords.importDialog.reading} progress={current.progress} />
          <div className="dialog-foot">
            <Button onPress={closeImport}>{importWords.importDialog.stop}</Button>
          </div>
        </Frame>
      );
    case 'matrix':
      return (
        <Frame key="matrix" title={current.fileName} narrow={false}>
          <MatrixImportSheet file={current} />
        </Frame>
      );
    case 'temperatures':
      return (
        <Frame key="temperatures" title={current.fileName} narrow={false} wide>
          <TemperatureImportSheet file={current} />
        </Frame>
      );
    case 'ground':
      return (
        <Frame key="ground" title={current.fileName} narrow={false} wide>
          <GroundImportSheet file={current} />
        </Frame>
      );
  }
}

type FrameProps = {
  readonly title: string;
  readonly children: ReactNode;
  readonly narrow: boolean;
  readonly wide?: boolean;
};

function Frame({ title, children, narrow, wide = false }: FrameProps) {
  const width = narrow ? ' modal-narrow' : wide ? ' modal-wide' : '';
  return (
    <ModalOverlay
      className="scrim"
      isOpen
      isDismissable={narrow}
      onOpenChange={(isOpen) => {
        if (!isOpen) closeImport();
      }}
    >
      <Modal className={`modal${width}`}>
        <Dialog className="dialog import">
          <Heading slot="title">{title}</Heading>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
