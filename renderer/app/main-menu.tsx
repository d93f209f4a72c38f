import { Menu as MenuIcon } from 'lucide-react';
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
import { COMMAND_GROUPS, type Command, IS_MAC, keyWords } from '../commands/index.ts';
import { appWords } from '../texts/app/index.ts';

/** Every command, in its group, with its key; those that cannot be used say why. */
export function MainMenu({ commands }: { readonly commands: readonly Command[] }) {
  const run = (id: string) => commands.find((command) => command.id === id)?.run();
  return (
    <MenuTrigger>
      <Button className="button button-quiet menu-button" aria-label={appWords.mainMenu.menu}>
        <MenuIcon size={17} aria-hidden="true" />
      </Button>
      <Popover className="popover menu-popover" placement="bottom start">
        <Menu
          className="menu"
          aria-label={appWords.mainMenu.commands}
          onAction={(key) => run(String(key))}
          disabledKeys={commands.filter((command) => command.whyNot() !== null).map((command) => command.id)}
        >
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
      </Popover>
    </MenuTrigger>
  );
}

function MenuRow({ command }: { readonly command: Command }) {
  const reason = command.whyNot();
  const [key] = command.keys;
  return (
    <MenuItem id={command.id} className="menu-item" textValue={command.title()}>
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
