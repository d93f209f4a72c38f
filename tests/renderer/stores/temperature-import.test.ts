import { beforeEach, describe, expect, test } from 'vitest';
import { ok } from '../../../core/base/index.ts';
import {
  addImported,
  closeImport,
  openQuestions,
  readAnswered,
  readGround,
  readTemperatureFile,
  showBook,
  type TemperatureImport,
  understandTemperatures,
  undo,
  useBook,
  useImport,
  useNotices,
} from '../../../renderer/stores/index.ts';
import { layerOf, sourceOf } from '../../core/intake/sources.ts';
import { answerEdits, type FakeHost, installFakeHost, openBookOf, settle, smallBook } from '../fake-host.ts';

let host: FakeHost;
const book = () => useBook.getState().open!.book;
function current(): TemperatureImport {
  const found = useImport.getState().current;
  if (found.kind !== 'temperatures') throw new Error(`temperatures were expected, not ${found.kind}`);
  return found;
}

beforeEach(() => {
  host = installFakeHost();
  closeImport();
  useBook.setState(useBook.getInitialState(), true);
  useNotices.setState(useNotices.getInitialState(), true);
  showBook(openBookOf(smallBook()));
});

const PLAIN = 'date,max (F),min (F)\n2026-12-31,70,40\n2027-01-01,72,41\n2027-01-03,71,42\n';

describe('a table of temperatures', () => {
  test('of which everything is plain needs no answer', () => {
    readTemperatureFile('yard.csv', PLAIN);
    expect(openQuestions(current())).toEqual([]);
    const merged = readAnswered(current(), book());
    expect(merged?.years.map((each) => [each.year, each.added, each.missing.length])).toEqual([
      [2026, 1, 0],
      [2027, 2, 1],
    ]);
    expect(merged?.years[0]?.record.id).toBe('yard-2026');
  });

  test('is not read before unit and order of dates are said, and never in a guessed one', () => {
    readTemperatureFile('yard.csv', 'date,max,min,soil\n3/4/2027,12,2,9\n3/5/2027,13,3,9\n');
    expect(openQuestions(current())).toEqual([
      'in which order the dates are written',
      'whether the air is in Fahrenheit or Celsius',
      'whether the soil is in Fahrenheit or Celsius',
    ]);
    expect(readAnswered(current(), book())).toBeNull();
    understandTemperatures({ dateOrder: 'dmy', airUnit: 'C', soilUnit: 'C' });
    // 3/4 is 3 April; 12 C are 53.6 F, 2 C are 35.6 F, 9 C are 48.2 F.
    expect(readAnswered(current(), book())?.reading.days[0]).toEqual(['2027-04-03', 53.6, 35.6, 48.2]);
  });

  test('other columns are looked at anew, with their own questions', () => {
    readTemperatureFile('yard.csv', 'when,a (F),b (F)\n2027-06-01,88,61\n');
    expect(openQuestions(current())).toEqual(['which column has the date', 'which columns have temperatures']);
    understandTemperatures({ columns: { date: 0, max: 1, min: 2, soil: -1, station: -1 } });
    expect(openQuestions(current())).toEqual([]);
    understandTemperatures({ station: ' ' });
    expect(openQuestions(current())).toEqual(['what the station is called']);
  });

  test('with several stations asks for one of them', () => {
    readTemperatureFile('net.csv', 'name,date,max (F),min (F)\nYard,2027-06-01,88,61\nHill,2027-06-01,84,58\n');
    expect(openQuestions(current())).toEqual(['which station is wanted']);
    understandTemperatures({ taken: 'Hill', station: 'Hill' });
    expect(readAnswered(current(), book())?.reading).toMatchObject({ accepted: 1, elsewhere: 1 });
  });

  test('goes into the book as one step that can be taken back', async () => {
    answerEdits(host);
    readTemperatureFile('yard.csv', PLAIN);
    const records = readAnswered(current(), book())!.years.map((each) => each.record);
    expect(addImported('yard.csv', { kind: 'temperatures', records })).toBe(true);
    await settle();
    expect(book().temperatures.map((each) => each.days.length)).toEqual([1, 2]);
    // The one station that there is now is the one that the next file adds to.
    readTemperatureFile('more.csv', 'date,max (F),min (F)\n2027-01-02,70,40\n');
    expect(current().station).toBe('yard');
    expect(readAnswered(current(), book())?.years[0]).toMatchObject({ isNew: false, added: 1, missing: [] });
    undo();
    await settle();
    expect(book().temperatures).toEqual([]);
  });

  test('that is dropped on the window is known by its columns, with the rows of the file', async () => {
    const layer = layerOf([
      { id: '1', attributes: { date: '2027-06-01', 'high (F)': '88', 'low (F)': '61' } },
      { id: '2', attributes: { date: '2027-06-01', 'high (F)': '89', 'low (F)': '62' } },
    ]);
    const features = layer.features.map((each, index) => ({ ...each, where: `days.csv, row ${index + 5}` }));
    const source = {
      ...sourceOf({ ...layer, fields: ['date', 'high (F)', 'low (F)'], features }),
      formatId: 'csv',
    };
    host.answer('ground.read', () => ok(source));
    await readGround('days.csv', 'file-1');
    const merged = readAnswered(current(), book());
    expect(merged?.reading.accepted).toBe(1);
    expect(merged?.reading.issues.map((each) => each.where)).toEqual(['days.csv, row 6']);
  });

  test('without a header, or without its text, is refused', () => {
    readTemperatureFile('yard.csv', '\n\n');
    expect(useImport.getState().current.kind).toBe('none');
    expect(useNotices.getState().notice).not.toBeNull();
    readTemperatureFile('yard.csv', null);
    expect(useImport.getState().current.kind).toBe('none');
  });
});
