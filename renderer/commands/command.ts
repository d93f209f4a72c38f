import { commandsWords } from '../texts/index.ts';

/** In the order of the menu: the book and its edits, what the rooms do, where to go, and the window itself. */
export const COMMAND_GROUPS = ['book', 'edit', 'draw', 'shed', 'round', 'day', 'paper', 'go', 'view', 'help'] as const;
export type CommandGroup = (typeof COMMAND_GROUPS)[number];
export const GROUP_TITLES: Readonly<Record<CommandGroup, string>> = commandsWords.groups;

/**
 * Something the user can do. One registry of these feeds the menu, the palette, the keys, the menus of things, the buttons and the
 * help page. Keys are written like "Mod+Z", "Alt+1", "?", "F1"; Mod is Ctrl, or Command on a Mac.
 */
export type Command = {
  readonly id: string;
  readonly group: CommandGroup;
  readonly title: () => string;
  readonly keys: readonly string[];
  /** Why it cannot be done now, in words; null where it can. */
  readonly whyNot: () => string | null;
  /** For what is on or off: whether it is on now; null where it is neither. */
  readonly isOn: () => boolean | null;
  readonly run: () => void;
};

/** A command as a group writes it. Words may change with what is selected. Work that takes time tells of its own failures. */
export type CommandSpec = {
  readonly title: string | (() => string);
  readonly keys?: readonly string[];
  readonly whyNot?: () => string | null;
  readonly isOn?: () => boolean;
  readonly run: () => unknown;
};

/** The commands of a group, by their ids, in this order. */
export function commandsOf(group: CommandGroup, specs: Readonly<Record<string, CommandSpec>>): readonly Command[] {
  return Object.entries(specs).map(([id, { title, keys = [], whyNot = () => null, isOn = () => null, run }]) => ({
    id,
    group,
    title: typeof title === 'string' ? () => title : title,
    keys,
    whyNot,
    isOn,
    run: () => {
      const work = run();
      if (work instanceof Promise) work.catch(() => undefined);
    },
  }));
}

export const IS_MAC = typeof navigator !== 'undefined' && /mac/i.test(navigator.platform);

/** The part of a keyboard event that commands look at. */
export type KeyPress = {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
};

/** "Mod+Shift+Z" from a key press. A sign that needs Shift is written without it: "?" not "Shift+?". */
export function keyName(press: KeyPress, mac: boolean): string {
  const mod = mac ? press.metaKey : press.ctrlKey;
  const single = press.key.length === 1;
  const letter = single && /[a-z]/i.test(press.key);
  const parts = [
    mod ? 'Mod' : '',
    press.altKey ? 'Alt' : '',
    press.shiftKey && (letter || !single) ? 'Shift' : '',
    single ? press.key.toUpperCase() : press.key,
  ];
  return parts.filter((part) => part !== '').join('+');
}

/** True for keys that are one character without Ctrl, Alt or Command; the user can turn those off. */
export function isCharacterKey(name: string): boolean {
  return name.length === 1;
}

const SIGNS = {
  ArrowLeft: '←',
  ArrowUp: '↑',
  ArrowRight: '→',
  ArrowDown: '↓',
  PageUp: 'Page Up',
  PageDown: 'Page Down',
  Escape: 'Esc',
} as const;

/** How a key is shown: "Ctrl+Z", or "⌘Z" on a Mac. */
export function keyWords(name: string, mac: boolean): string {
  // The plus sign itself stands alone.
  const parts = name === '+' ? [name] : name.split('+').filter((part) => part !== '');
  const signs: Readonly<Record<string, string>> = mac
    ? { Mod: '⌘', Alt: '⌥', Shift: '⇧', Delete: '⌦', ...SIGNS }
    : { Mod: 'Ctrl', ...SIGNS };
  return parts.map((part) => signs[part] ?? part).join(mac ? '' : '+');
}

/** The command for a key, or null. */
export function commandForKey(commands: readonly Command[], name: string): Command | null {
  return commands.find((command) => command.keys.includes(name)) ?? null;
}

/** Commands whose title holds every word of the query; those that start with it come first. */
export function searchCommands(commands: readonly Command[], query: string): readonly Command[] {
  const words = query
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const rank = (command: Command): number =>
    command
      .title()
      .toLowerCase()
      .startsWith(words[0] ?? '')
      ? 0
      : 1;
  return commands
    .filter((command) => {
      const text = `${command.title()} ${GROUP_TITLES[command.group]}`.toLowerCase();
      return words.every((word) => text.includes(word));
    })
    .sort((left, right) => rank(left) - rank(right));
}
