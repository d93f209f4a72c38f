import { Layers } from 'lucide-react';
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { useChosenBackground } from '../scene/index.ts';
import { backdropWords } from '../texts/index.ts';
import { BackgroundChoice } from './background-choice.tsx';
import { BackgroundPlate } from './background-plate.tsx';
import { NetworkQuestion } from './network-question.tsx';
import { PictureList } from './picture-list.tsx';

/** On every map: what lies behind the lawns, chosen and named. `canLay`: pictures can be laid on this map. */
export function BackdropControls({ canLay = false }: { readonly canLay?: boolean }) {
  const chosen = useChosenBackground();
  return (
    <>
      <DialogTrigger>
        <Button
          className="button backdrop-button"
          aria-label={backdropWords.controls.chosen(chosen?.name ?? backdropWords.controls.gridOnly)}
        >
          <Layers size={16} aria-hidden="true" />
        </Button>
        <Popover className="popover backdrop-popover" placement="left top">
          <Dialog className="backdrop-panel" aria-label={backdropWords.controls.title}>
            {({ close }) => (
              <>
                <BackgroundChoice onAsk={close} />
                <PictureList canLay={canLay} onLay={close} />
              </>
            )}
          </Dialog>
        </Popover>
      </DialogTrigger>
      <BackgroundPlate />
      <NetworkQuestion />
    </>
  );
}
