import { Menu as MenuIcon } from 'lucide-react';
import type { ComponentProps } from 'react';
import {
  Button,
  Keyboard,
  Menu,
  Header as MenuHeading,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
  Text,
} from 'react-aria-components';
import { COMMAND_GROUPS, type Command, IS_MAC, keyWords, runCommand } from '../commands/index.ts';
import { appWords } from '../texts/app/index.ts';

type MenuProps = { readonly commands: readonly Command[] };

/** Every command, in its group, with its key; those that cannot be used say why. */
export function MainMenu({ commands }: MenuProps) {
  return (
    <MenuTrigger>
      <Button className="button button-quiet menu-button" aria-label={appWords.mainMenu.menu}>
        <MenuIcon size={17} aria-hidden="true" />
      </Button>
      <Popover className="popover menu-popover" placement="bottom start">
        <Commands commands={commands} />
      </Popover>
    </MenuTrigger>
  );
}

/** Drawn when the menu opens, so that what can be done is asked for then and not when the window was drawn. */
function Commands({ commands }: MenuProps) {
  const run = (id: string) => {
    const command = commands.find((each) => each.id === id);
    if (command !== undefined) runCommand(command);
  };
  return (
    <Menu className="menu" aria-label={appWords.mainMenu.commands} onAction={(key) => run(String(key))}>
      {COMMAND_GROUPS.map((group) => (
        <MenuSection key={group} className="menu-section">
          <MenuHeading className="menu-heading">{group}</MenuHeading>
          {commands
            .filter((command) => command.group === group)
            .map((command) => (
              <MenuRow key={command.id} command={command} />
            ))}
        </MenuSection>
      ))}
    </Menu>
  );
}

/** A command that cannot be used can be come to with the arrow keys all the same, so that its reason can be read. */
function MenuRow({ command }: { readonly command: Command }) {
  const reason = command.whyNot();
  const [key] = command.keys;
  return (
    <MenuItem
      id={command.id}
      className={`menu-item${reason === null ? '' : ' menu-item-off'}`}
      textValue={command.title()}
      render={(props) => (
        <div {...(props as ComponentProps<'div'>)} aria-disabled={reason === null ? undefined : true} />
      )}
    >
      <Text slot="label">{command.title()}</Text>
      {reason !== null && (
        <Text slot="description" className="menu-reason">
          {reason}
        </Text>
      )}
      {key !== undefined && <Keyboard className="key">{keyWords(key, IS_MAC)}</Keyboard>}
    </MenuItem>
  );
}
