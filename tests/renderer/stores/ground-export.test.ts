import { beforeEach, describe, expect, test } from 'vitest';
import { ok } from '../../../core/base/index.ts';
import { WRITERS } from '../../../core/formats/index.ts';
import { COMMANDS } from '../../../renderer/commands/index.ts';
import { exportGround, showBook, useBook, useHost, useNotices } from '../../../renderer/stores/index.ts';
import { installFakeHost, openBookOf, smallBook } from '../fake-host.ts';

beforeEach(() => {
  useBook.setState(useBook.getInitialState(), true);
  useHost.setState(useHost.getInitialState(), true);
  useNotices.setState(useNotices.getInitialState(), true);
});

describe('writing the lawns of a book', () => {
  test.each(WRITERS)('as $id hands the text to the host under a name that a file can have', async (writer) => {
    const host = installFakeHost();
    host.answer('file.saveText', () => ok({ kind: 'saved', name: 'written file' }));
    showBook(openBookOf({ ...smallBook(), name: ' Spring: north/south?. ' }));
    await exportGround(writer);
    const [asked] = host.asked.filter((each) => each.name === 'file.saveText');
    expect(asked?.request).toMatchObject({ suggestedName: `Spring north south.${writer.extension}` });
    expect(JSON.stringify(asked?.request)).toContain('First Lawn');
    expect(useNotices.getState().notice).toMatchObject({ kind: 'news', text: 'written file is written' });
  });

  test('is a command for each kind, with the reason where it cannot be done', () => {
    const commands = COMMANDS.filter((each) => each.id.startsWith('book.export-'));
    expect(commands.map((each) => each.id)).toEqual(WRITERS.map((each) => `book.export-${each.id}`));
    expect(commands.map((each) => each.whyNot())).toEqual(commands.map(() => 'No book is open'));
    showBook(openBookOf({ ...smallBook(), properties: [] }));
    expect(commands.map((each) => each.whyNot())).toEqual(commands.map(() => 'The book has no lawns yet'));
    showBook(openBookOf(smallBook()));
    expect(commands.map((each) => each.whyNot())).toEqual(commands.map(() => null));
  });
});
