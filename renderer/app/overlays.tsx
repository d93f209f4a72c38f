import { type ReactNode, useState } from 'react';
import {
  Autocomplete,
  Dialog,
  Heading,
  Input,
  Keyboard,
  ListBox,
  ListBoxItem,
  Modal,
  ModalOverlay,
  SearchField,
} from 'react-aria-components';
import { COMMANDS, type Command, GROUP_TITLES, IS_MAC, keyWords, searchCommands } from '../commands/index.ts';
import { openOverlay, say, useView } from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { commonWords } from '../texts/index.ts';
import { Button } from '../ui/index.ts';
import { About } from './about.tsx';
import { BackupList } from './backups.tsx';
import { KeysPage } from './keys-page.tsx';

/** Palette, keys and about: whichever is open. */
export function Overlays() {
  const overlay = useView((state) => state.overlay);
  if (overlay === null) return null;
  if (overlay === 'palette') return <Palette />;
  if (overlay === 'keys') {
    return (
      <OverlaySheet title={appWords.keys.title}>
        <KeysPage />
      </OverlaySheet>
    );
  }
  if (overlay === 'backups') {
    return (
      <OverlaySheet title={appWords.overlays.backups}>
        <BackupList />
      </OverlaySheet>
    );
  }
  return (
    <OverlaySheet title={commonWords.program}>
      <About />
    </OverlaySheet>
  );
}

type SheetProps = { readonly title: string; readonly children: ReactNode };

function OverlaySheet({ title, children }: SheetProps) {
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(isOpen) => !isOpen && openOverlay(null)}>
      <Modal className="modal">
        <Dialog className="dialog">
          <div className="dialog-head">
            <Heading slot="title">{title}</Heading>
            <Button look="quiet" onPress={() => openOverlay(null)}>
              {commonWords.close}
            </Button>
          </div>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** Runs a command after the palette is gone, so that its own overlay or focus is not closed with it. */
function runFromPalette(command: Command): void {
  const reason = command.whyNot();
  if (reason !== null) {
    say(`${command.title()}: ${reason}`);
    return;
  }
  openOverlay(null);
  setTimeout(command.run, 0);
}

function Palette() {
  const [query, setQuery] = useState('');
  const found = searchCommands(COMMANDS, query);
  return (
    <ModalOverlay
      className="scrim scrim-top"
      isOpen
      isDismissable
      onOpenChange={(isOpen) => !isOpen && openOverlay(null)}
    >
      <Modal className="modal palette">
        <Dialog className="dialog" aria-label={appWords.overlays.findACommand}>
          <Autocomplete inputValue={query} onInputChange={setQuery}>
            <SearchField aria-label={appWords.overlays.findACommand} autoFocus className="palette-search">
              <Input className="input" placeholder={appWords.overlays.findACommand} />
            </SearchField>
            <ListBox
              className="palette-list"
              aria-label={appWords.overlays.commands}
              selectionMode="none"
              onAction={(key) => {
                const command = COMMANDS.find((each) => each.id === key);
                if (command !== undefined) runFromPalette(command);
              }}
              renderEmptyState={() => <p className="quiet palette-none">{appWords.overlays.noneFound}</p>}
            >
              {found.map((command) => (
                <PaletteRow key={command.id} command={command} />
              ))}
            </ListBox>
          </Autocomplete>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function PaletteRow({ command }: { readonly command: Command }) {
  const reason = command.whyNot();
  const [key] = command.keys;
  return (
    <ListBoxItem
      id={command.id}
      className={`menu-item${reason === null ? '' : ' menu-item-off'}`}
      textValue={command.title()}
    >
      <span>{command.title()}</span>
      <span className="menu-reason">{reason ?? GROUP_TITLES[command.group]}</span>
      {key !== undefined && <Keyboard className="key">{keyWords(key, IS_MAC)}</Keyboard>}
    </ListBoxItem>
  );
}
