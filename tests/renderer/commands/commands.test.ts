import { beforeEach, describe, expect, test } from 'vitest';
import { type Book, emptyBook } from '../../../core/book/index.ts';
import {
  COMMAND_GROUPS,
  COMMANDS,
  commandForKey,
  isCharacterKey,
  keyName,
  keyWords,
  SUBJECT_MENUS,
  searchCommands,
} from '../../../renderer/commands/index.ts';
import { drawZone, useBook, useDraft, useHost, usePlans, useSelection } from '../../../renderer/stores/index.ts';
import { sampleBook } from '../../support/samples.ts';
import { openBookOf } from '../fake-host.ts';

const press = (key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {}) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});

beforeEach(() => {
  useDraft.setState(useDraft.getInitialState(), true);
  usePlans.setState(usePlans.getInitialState(), true);
  useBook.setState(useBook.getInitialState(), true);
  useHost.setState(useHost.getInitialState(), true);
  useSelection.setState(useSelection.getInitialState(), true);
});

describe('registry', () => {
  test('no two commands share a key', () => {
    const keys = COMMANDS.flatMap((command) => command.keys);
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });

  test('no two commands share an id, and every group has some', () => {
    expect(new Set(COMMANDS.map((command) => command.id)).size).toBe(COMMANDS.length);
    for (const group of COMMAND_GROUPS) expect(COMMANDS.some((command) => command.group === group)).toBe(true);
  });

  test('every command has a title, and says why where it cannot be used', () => {
    for (const command of COMMANDS) {
      expect(command.title()).not.toBe('');
      expect(command.whyNot()).not.toBe('');
    }
  });

  test('without a book everything that needs one says so', () => {
    const blocked = COMMANDS.filter((command) => command.whyNot() === 'No book is open').map((command) => command.id);
    expect(blocked).toEqual(
      expect.arrayContaining(['book.import', 'edit.add-lawn', 'go.day', 'plan.start', 'view.all']),
    );
    expect(blocked).not.toContain('book.open');
  });

  test('undo names the step that it takes back', () => {
    const undo = COMMANDS.find((command) => command.id === 'edit.undo')!;
    expect(undo.title()).toBe('Undo');
    expect(undo.whyNot()).toBe('Nothing to take back');
    const step = { label: 'Change gate width', action: { kind: 'set' as const, changes: {} } };
    useBook.setState({ history: { undo: [step], redo: [] } });
    expect(undo.title()).toBe('Undo Change gate width');
    expect(undo.whyNot()).toBeNull();
  });

  test('single characters are the only keys that can be turned off', () => {
    const lettered = COMMANDS.filter((command) => command.keys.some(isCharacterKey));
    expect(new Set(lettered.map((command) => command.group))).toEqual(new Set(['draw', 'help']));
  });
});

describe('whatever the program is doing', () => {
  const open = (book: Book) => useBook.setState({ open: openBookOf(book) });
  const sample = () => open(sampleBook('residential-day'));
  const states: Readonly<Record<string, () => void>> = {
    'no book is open': () => undefined,
    'an empty book is open': () => open(emptyBook('b', 'Book')),
    'a sample is open': sample,
    'something is drawn': () => {
      sample();
      drawZone('polygon', true);
      expect(useDraft.getState().draft).not.toBeNull();
    },
    'a round is planned': () => {
      sample();
      const job = { jobId: 'j', roundId: 'r', step: '', done: 0, total: 1, bestSoFar: '', cancelling: false };
      usePlans.setState({ job });
    },
  };

  test.each(Object.entries(states))('%s: every command has words, and a reason or none', (_, enter) => {
    enter();
    for (const command of COMMANDS) {
      expect(command.title().trim(), command.id).not.toBe('');
      const reason = command.whyNot();
      if (reason !== null) expect(reason, command.id).toMatch(/\p{L}{2}/u);
      // Every command stands in a group, which the menu shows, and is found in the palette by its own words.
      expect(COMMAND_GROUPS, command.id).toContain(command.group);
      expect(searchCommands(COMMANDS, command.title())).toContain(command);
    }
  });

  test('what is drawn and what is planned keep commands from being begun twice', () => {
    const reasonOf = (id: string) => COMMANDS.find((command) => command.id === id)?.whyNot();
    states['something is drawn']?.();
    expect(reasonOf('draw.zone')).toMatch(/finish it or set it aside/);
    states['a round is planned']?.();
    expect(reasonOf('plan.start')).toMatch(/planned already/);
    expect(reasonOf('plan.cancel')).toBeNull();
  });
});

describe('keys', () => {
  test('have one name whatever the system', () => {
    expect(keyName(press('z', { ctrlKey: true }), false)).toBe('Mod+Z');
    expect(keyName(press('z', { metaKey: true }), true)).toBe('Mod+Z');
    expect(keyName(press('Z', { ctrlKey: true, shiftKey: true }), false)).toBe('Mod+Shift+Z');
    expect(keyName(press('F1'), false)).toBe('F1');
  });

  test('a sign that needs Shift is named by the sign alone', () => {
    expect(keyName(press('?', { shiftKey: true }), false)).toBe('?');
  });

  test('lead to their command', () => {
    expect(commandForKey(COMMANDS, 'Mod+Shift+Z')?.id).toBe('edit.redo');
    expect(commandForKey(COMMANDS, 'Mod+Y')?.id).toBe('edit.redo');
    expect(commandForKey(COMMANDS, 'Alt+4')?.id).toBe('go.day');
    expect(commandForKey(COMMANDS, 'Mod+Q')).toBeNull();
  });

  test('are shown as the system shows them', () => {
    expect(keyWords('Mod+Shift+Z', false)).toBe('Ctrl+Shift+Z');
    expect(keyWords('Mod+Shift+Z', true)).toBe('⌘⇧Z');
  });
});

describe('palette', () => {
  test('finds by every word, in title or group, and puts what starts so first', () => {
    const found = searchCommands(COMMANDS, 'dark').map((command) => command.id);
    expect(found[0]).toBe('view.dark');
    expect(found).toContain('view.system');
    expect(searchCommands(COMMANDS, 'map lawn').map((command) => command.id)).toEqual(['view.selection']);
  });

  test('shows everything for an empty query and nothing for nonsense', () => {
    expect(searchCommands(COMMANDS, '  ')).toHaveLength(COMMANDS.length);
    expect(searchCommands(COMMANDS, 'xyzzy')).toEqual([]);
  });
});

test('menus of things are made of commands, none of them twice', () => {
  const known = new Set(COMMANDS.map(({ id }) => id));
  for (const [subject, sections] of Object.entries(SUBJECT_MENUS)) {
    const ids = sections.flat();
    expect(
      ids.filter((id) => !known.has(id)),
      subject,
    ).toEqual([]);
    expect(new Set(ids).size, subject).toBe(ids.length);
  }
});
