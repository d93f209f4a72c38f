import { Menu as MenuIcon } from 'lucide-react';
import { Button, Menu, MenuItem, MenuTrigger, Popover, SubmenuTrigger, Text } from 'react-aria-components';
import { COMMAND_GROUPS, COMMANDS, CommandMenu, GROUP_TITLES } from '../commands/index.ts';
import { appWords } from '../texts/app/index.ts';

/** Every command, in a menu for each group. */
export function MainMenu() {
  return (
    <MenuTrigger>
      <Button className="button button-quiet menu-button" aria-label={appWords.mainMenu.menu}>
        <MenuIcon size={17} aria-hidden="true" />
      </Button>
      <Popover className="popover" placement="bottom start">
        <Menu className="menu" aria-label={appWords.mainMenu.commands}>
          {COMMAND_GROUPS.map((group) => (
            <SubmenuTrigger key={group}>
              <MenuItem className="menu-item" textValue={GROUP_TITLES[group]}>
                <Text slot="label">{GROUP_TITLES[group]}</Text>
                <span className="menu-more" aria-hidden="true">
                  ›
                </span>
              </MenuItem>
              <Popover className="popover menu-popover">
                <CommandMenu
                  label={GROUP_TITLES[group]}
                  sections={[COMMANDS.filter((command) => command.group === group).map((command) => command.id)]}
                />
              </Popover>
            </SubmenuTrigger>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
