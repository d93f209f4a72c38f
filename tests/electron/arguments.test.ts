import { describe, expect, test } from 'vitest';
import { readStartArguments, type StartWishes } from '../../electron/arguments.ts';

const NOTHING: StartWishes = { open: { kind: 'nothing' }, openBrowser: true, browserOnly: false, port: 0 };

describe('the words of the start command', () => {
  test.each<[string, Partial<StartWishes>]>([
    ['', {}],
    ['--no-open', { openBrowser: false }],
    ['--browser --port 8123', { browserOnly: true, port: 8123 }],
    ['--sample', { open: { kind: 'sample', sampleId: null } }],
    ['--sample mixed-day --no-open', { open: { kind: 'sample', sampleId: 'mixed-day' }, openBrowser: false }],
    ['--sample --no-open', { open: { kind: 'sample', sampleId: null }, openBrowser: false }],
    ['book.swardway', { open: { kind: 'file', file: 'book.swardway' } }],
    ['--no-open book.json', { open: { kind: 'file', file: 'book.json' }, openBrowser: false }],
  ])('"%s"', (words, wishes) => {
    const reading = readStartArguments(words.split(' ').filter((word) => word !== ''));
    expect(reading).toEqual({ kind: 'start', wishes: { ...NOTHING, ...wishes } });
  });

  test.each(['--port', '--port x', '--port -1', '--port 65536', '--port 1.5', '--unknown', 'a.json b.json'])(
    '"%s" is wrong',
    (words) => {
      expect(readStartArguments(words.split(' ')).kind).toBe('wrong');
    },
  );

  test.each(['--help', '-h', '--no-open --help'])('"%s" asks for help', (words) => {
    expect(readStartArguments(words.split(' '))).toEqual({ kind: 'help' });
  });
});
