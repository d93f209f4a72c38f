import type { ComponentProps } from 'react';
import { Keyboard, Menu, MenuItem, MenuSection, Text } from 'react-aria-components';
import { commandsWords } from '../texts/index.ts';
import { IS_MAC, keyWords } from './command.ts';
import { commandNamed } from './registry.ts';
import { runCommand, useCommand } from './use-command.ts';

type CommandMenuProps = {
  readonly label: string;
  /** Ids of commands, with a line between the lists. */
  readonly sections: readonly (readonly string[])[];
  readonly onDone?: () => void;
};

/** A menu of commands. Those that cannot be used stay in it and can be come to, so that their reason can be read. */
export function CommandMenu({ label, sections, onDone }: CommandMenuProps) {
  return (
    <Menu
      className="menu"
      aria-label={label}
      autoFocus="first"
      onAction={(id) => {
        onDone?.();
        // After the menu is gone and the focus is back, so that what the command opens is not closed with the menu.
        setTimeout(() => runCommand(commandNamed(String(id))), 0);
      }}
    >
      {sections.map((ids) => (
        <MenuSection key={ids.join(' ')} className="menu-section" aria-label={label}>
          {ids.map((id) => (
            <CommandRow key={id} id={id} />
          ))}
        </MenuSection>
      ))}
    </Menu>
  );
}

function CommandRow({ id }: { readonly id: string }) {
  const { command, title, whyNot, isOn } = useCommand(id);
  const [key] = command.keys;
  return (
    <MenuItem
      id={id}
      className={`menu-item${whyNot === null ? '' : ' menu-item-off'}`}
      textValue={title}
      render={(props) => (
        <div {...(props as ComponentProps<'div'>)} aria-disabled={whyNot === null ? undefined : true} />
      )}
    >
      <Text slot="label">
        {title}
        {isOn === true && (
          <>
            <span aria-hidden="true"> ✓</span>
            <span className="only-spoken">{commandsWords.menu.isOn}</span>
          </>
        )}
      </Text>
      {whyNot !== null && (
        <Text slot="description" className="menu-reason">
          {whyNot}
        </Text>
      )}
      {key !== undefined && <Keyboard className="key">{keyWords(key, IS_MAC)}</Keyboard>}
    </MenuItem>
  );
}
