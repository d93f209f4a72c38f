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
  Text,
} from 'react-aria-components';
import { COMMAND_GROUPS, COMMANDS, type Command, IS_MAC, keyWords, searchCommands } from '../commands/index.ts';
import { copyDiagnostics, openOverlay, say, useHost, useView } from '../stores/index.ts';
import { Button } from '../ui/index.ts';
import { BackupList } from './backups.tsx';

/** Palette, keys and about: whichever is open. */
export function Overlays() {
  const overlay = useView((state) => state.overlay);
  if (overlay === null) return null;
  if (overlay === 'palette') return <Palette />;
  if (overlay === 'keys') return <KeysHelp />;
  if (overlay === 'backups') {
    return (
      <OverlaySheet title="Backups of this book">
        <BackupList />
      </OverlaySheet>
    );
  }
  return <About />;
}

type SheetProps = { readonly title: string; readonly children: ReactNode; readonly narrow?: boolean };

function OverlaySheet({ title, children, narrow = false }: SheetProps) {
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(isOpen) => !isOpen && openOverlay(null)}>
      <Modal className={`modal${narrow ? ' modal-narrow' : ''}`}>
        <Dialog className="dialog">
          <div className="dialog-head">
            <Heading slot="title">{title}</Heading>
            <Button look="quiet" onPress={() => openOverlay(null)}>
              Close
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
        <Dialog className="dialog" aria-label="Find a command">
          <Autocomplete inputValue={query} onInputChange={setQuery}>
            <SearchField aria-label="Find a command" autoFocus className="palette-search">
              <Input className="input" placeholder="Find a command" />
            </SearchField>
            <ListBox
              className="palette-list"
              aria-label="Commands"
              selectionMode="none"
              onAction={(key) => {
                const command = COMMANDS.find((each) => each.id === key);
                if (command !== undefined) runFromPalette(command);
              }}
              renderEmptyState={() => <p className="quiet palette-none">No command is called that.</p>}
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
      <Text slot="label">{command.title()}</Text>
      <Text slot="description" className="menu-reason">
        {reason ?? command.group}
      </Text>
      {key !== undefined && <Keyboard className="key">{keyWords(key, IS_MAC)}</Keyboard>}
    </ListBoxItem>
  );
}

function KeysHelp() {
  return (
    <OverlaySheet title="Keys">
      <div className="keys-columns">
        {COMMAND_GROUPS.map((group) => (
          <section key={group}>
            <h3>{group}</h3>
            <dl className="keys-list">
              {COMMANDS.filter((command) => command.group === group && command.keys.length > 0).map((command) => (
                <div key={command.id}>
                  <dt>{command.title()}</dt>
                  <dd>
                    {command.keys.map((key) => (
                      <kbd key={key} className="key">
                        {keyWords(key, IS_MAC)}
                      </kbd>
                    ))}
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
        <section>
          <h3>In lists, map and ribbon</h3>
          <dl className="keys-list">
            <KeyLine what="Move in a list" keys="↑ ↓" />
            <KeyLine what="Move the map" keys="← ↑ ↓ →" />
            <KeyLine what="Map closer, farther" keys="+ −" />
            <KeyLine
              what="While drawing: move the crosshair, by 1 ft, by 0.1 ft"
              keys="← →, Shift ← →, Alt Shift ← →"
            />
            <KeyLine what="While drawing: set a corner, finish" keys="Enter, Enter twice" />
            <KeyLine what="While drawing: no snapping, move the map" keys="Alt, Space" />
            <KeyLine what="Next or previous event on the ribbon" keys="← →" />
            <KeyLine what="Size a panel, fold it" keys="← → Enter" />
            <KeyLine what="Take typed text, drop it" keys="Enter, Esc" />
          </dl>
        </section>
      </div>
    </OverlaySheet>
  );
}

function KeyLine({ what, keys }: { readonly what: string; readonly keys: string }) {
  return (
    <div>
      <dt>{what}</dt>
      <dd>
        <kbd className="key">{keys}</kbd>
      </dd>
    </div>
  );
}

function About() {
  const info = useHost((state) => state.info);
  return (
    <OverlaySheet title="Swardway" narrow>
      <p>
        Plans days of lawn treatment: how much turf there is, which machine reaches it, what goes into each fill, where
        to refill, and when the truck is home.
      </p>
      <p className="quiet">
        It gives no advice on products. The label is the law; mind wind, heat, water, slopes, people and pets, and keep
        to local rules.
      </p>
      {info !== null && (
        <p className="quiet small">
          Version {info.version}, {info.host === 'window' ? 'in its own window' : 'in a browser'}, {info.platform},
          SQLite {info.sqliteVersion}
        </p>
      )}
      <Button onPress={() => copyDiagnostics().catch(() => undefined)}>Copy diagnostics</Button>
      <p className="quiet small">
        Versions, sizes and the end of the log as text, for a report of a fault. No name, address or place is in it.
      </p>
    </OverlaySheet>
  );
}
