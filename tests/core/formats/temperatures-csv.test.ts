import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  guessTemperatureColumns,
  guessTemperatures,
  looksLikeTemperatures,
  readTable,
  readTemperatures,
  readTemperatureTable,
  type Table,
  type TemperatureAnswers,
} from '../../../core/formats/index.ts';

function table(text: string): Table {
  const read = readTable(text, 'days.csv');
  if (!read.ok) throw new Error(read.error.detail);
  return read.value;
}

function look(text: string) {
  const read = table(text);
  return guessTemperatures(read, guessTemperatureColumns(read.columns));
}

function take(text: string, answers: Partial<TemperatureAnswers> = {}) {
  const read = table(text);
  const columns = guessTemperatureColumns(read.columns);
  return readTemperatures(
    read,
    { columns, dateOrder: null, airUnit: 'F', soilUnit: 'F', station: null, ...answers },
    'days.csv',
  );
}

describe('columns', () => {
  test.each([
    ['date,max,min,soil', [0, 1, 2, 3]],
    ['Date;High (°F);Low (°F);Soil 2 in (°F)', [0, 1, 2, 3]],
    ['STATION,NAME,DATE,PRCP,SNOW,TMAX,TMIN', [2, 5, 6, -1]],
    ['Day,Max Temp,Min Temp,Max Humidity,Min Humidity,Max Wind,4in Soil Max,4in Soil Min,4in Soil Avg', [0, 1, 2, 8]],
    ['obs_date,tempMinF,tempMaxF', [0, 2, 1, -1]],
    ['Timestamp,Soil moisture,Soil temperature', [0, -1, -1, 2]],
    ['a,b,c', [-1, -1, -1, -1]],
  ])('of %s are found', (header, [date, max, min, soil]) =>
    expect(guessTemperatureColumns(table(`${header}\n`).columns)).toMatchObject({ date, max, min, soil }),
  );

  test('a table of lawns or of travel times does not look like temperatures', () => {
    expect(looksLikeTemperatures(['date', 'high', 'low'])).toBe(true);
    expect(looksLikeTemperatures(['date', 'soil'])).toBe(true);
    expect(looksLikeTemperatures(['id', 'address', 'lat', 'lon', 'area'])).toBe(false);
    expect(looksLikeTemperatures(['from', 'to', 'seconds'])).toBe(false);
    expect(looksLikeTemperatures(['date', 'soil type', 'lat', 'lon'])).toBe(false);
    expect(looksLikeTemperatures(['date', 'address', 'high', 'low'])).toBe(false);
    expect(looksLikeTemperatures(['NAME', 'LATITUDE', 'LONGITUDE', 'DATE', 'TMAX', 'TMIN'])).toBe(true);
    expect(looksLikeTemperatures(['date', 'max'])).toBe(false);
  });
});

describe('the header', () => {
  test('may stand below words about the station; rows keep their numbers', () => {
    const text = 'Station: Yard\nsince 2019, by hand\n\nDate,High (F),Low (F)\n2027-03-01,60,40\n2027-03-02,400,41\n';
    const read = readTemperatureTable(text, 'days.csv');
    if (!read.ok) throw new Error(read.error.detail);
    expect(read.value.columns).toEqual(['Date', 'High (F)', 'Low (F)']);
    const columns = guessTemperatureColumns(read.value.columns);
    const days = readTemperatures(
      read.value,
      { columns, dateOrder: null, airUnit: 'F', soilUnit: 'F', station: null },
      'days.csv',
    );
    expect(days.days.length).toBe(1);
    expect(days.issues.map((each) => each.where)).toEqual(['days.csv, row 6']);
  });

  test('of names that nobody foresaw is the first row, for the user to say what is what', () => {
    const read = readTemperatureTable('Tag;Hoch;Tief\n2027-03-01;15;4\n', 'days.csv');
    expect(read.ok && read.value.columns).toEqual(['Tag', 'Hoch', 'Tief']);
  });

  test('is missed where the first row has figures, rather than lost as a day', () => {
    expect(readTemperatureTable('2027-03-01,60,40\n2027-03-02,61,41\n', 'days.csv')).toMatchObject({
      ok: false,
      error: { code: 'format-invalid', where: 'days.csv, row 1' },
    });
    expect(readTemperatureTable('', 'days.csv')).toMatchObject({ ok: false });
  });
});

describe('Celsius or Fahrenheit', () => {
  const warm = '2027-06-01,88,61\n2027-06-02,90,63\n';
  const cool = '2027-06-01,31,16\n2027-06-02,32,17\n';

  test('is known where the header says it and the figures look like it', () => {
    expect(look(`date,max (F),min (F)\n${warm}`).air).toMatchObject({ unit: 'F', stated: 'F' });
    expect(look(`date,max °C,min °C\n${cool}`).air).toMatchObject({ unit: 'C', stated: 'C' });
    expect(look(`date,Maximum Celsius,Minimum Celsius\n${cool}`).air).toMatchObject({ unit: 'C' });
  });

  test('is asked where the header does not say it', () => {
    const { air } = look(`date,max,min\n${warm}`);
    expect(air.unit).toBeNull();
    expect(air.why).toBe(
      'The file does not say its unit; nearly all figures are at most 90, and that looks like Fahrenheit.',
    );
  });

  test('is asked where a column of Fahrenheit looks like Celsius, and the other way round', () => {
    const { air } = look(`date,max (F),min (F)\n${cool}`);
    expect(air).toMatchObject({ unit: null, stated: 'F' });
    expect(air.why).toBe('The header says Fahrenheit, but nearly all figures are at most 32; that looks like Celsius.');
    expect(look(`date,max (C),min (C)\n${warm}`).air).toMatchObject({ unit: null, stated: 'C' });
  });

  test('is not settled by one figure that is out of place', () => {
    const rows = Array.from({ length: 30 }, (_, day) => `2027-06-${String(day + 1).padStart(2, '0')},31,16`);
    const text = `date,max (F),min (F)\n${rows.join('\n')}\n2027-07-01,280,16\n`;
    expect(look(text).air).toMatchObject({ unit: null, stated: 'F' });
  });

  test('is asked for the soil by itself', () => {
    const guess = look('date,max (F),min (F),soil\n2027-06-01,88,61,20.5\n');
    expect(guess.air.unit).toBe('F');
    expect(guess.soil.unit).toBeNull();
  });

  test('is asked where the columns name different units', () => {
    expect(look(`date,max (F),min (C)\n${warm}`).air).toMatchObject({ unit: null, stated: null });
  });

  test('is read as it was answered; a cell that names its unit keeps it', () => {
    const { days } = take('date,max,min,soil\n2027-06-01,30,20,21.5\n2027-06-02,86 F,68 F,\n', {
      airUnit: 'C',
      soilUnit: 'C',
    });
    // 30 C are 86 F, 20 C are 68 F, 21.5 C are 70.7 F.
    expect(days).toEqual([
      ['2027-06-01', 86, 68, 70.7],
      ['2027-06-02', 86, 68, null],
    ]);
  });
});

describe('rows', () => {
  test('are all accounted for, and what is wrong is named with its row', () => {
    const text = [
      'date,max,min,soil',
      '2027-03-02,60,40,45',
      '2027-03-01,58,38,44',
      '2027-03-03,260,40,45',
      '2027-03-04,40,60,45',
      '2027-03-05,x,40,45',
      '2027-02-30,60,40,45',
      '2027-03-02,61,41,45',
      '2027-03-06,M,-9999,',
      '2027-03-07,-,38,',
    ].join('\n');
    const read = take(text);
    expect(read).toMatchObject({ found: 9, accepted: 3, rejected: 5, empty: 1, elsewhere: 0 });
    expect(read.days).toEqual([
      ['2027-03-01', 58, 38, 44],
      ['2027-03-02', 60, 40, 45],
      ['2027-03-07', null, 38, null],
    ]);
    expect(read.issues.map((each) => [each.code, each.where])).toEqual([
      ['temperature-absurd', 'days.csv, row 4'],
      ['temperature-absurd', 'days.csv, row 5'],
      ['row-malformed', 'days.csv, row 6'],
      ['date-unreadable', 'days.csv, row 7'],
      ['duplicate-day', 'days.csv, row 8'],
    ]);
    expect(read.issues[4]?.message).toContain('row 2');
  });

  test('of Celsius are absurd after they were turned into Fahrenheit, not before', () => {
    // 60 C are 140 F.
    expect(take('date,max,min\n2027-03-03,60,20\n', { airUnit: 'C' })).toMatchObject({ accepted: 0, rejected: 1 });
    expect(take('date,max,min\n2027-03-03,60,20\n')).toMatchObject({ accepted: 1 });
  });

  test('of other stations are counted, not read', () => {
    const text = 'name,date,max,min\nYard,2027-03-01,60,40\nHill,2027-03-01,50,30\nYard,2027-03-02,61,41\n';
    expect(look(text).stations).toEqual(['Yard', 'Hill']);
    expect(take(text, { station: 'Hill' })).toMatchObject({
      days: [['2027-03-01', 50, 30, null]],
      accepted: 1,
      elsewhere: 2,
    });
  });

  test('where the unit seems to change are named', () => {
    const read = take('date,max,min\n2027-06-01,88,61\n2027-06-02,30,16\n2027-06-03,31,17\n');
    expect(read.accepted).toBe(3);
    expect(read.issues).toEqual([
      expect.objectContaining({ code: 'temperature-jump', severity: 'warning', where: 'days.csv, row 3' }),
    ]);
  });

  test('are never lost, whatever is in them', () => {
    const cell = fc.oneof(
      fc.constantFrom('', 'M', '60', '-5', '70 F', '12 C', '1e9', '"', '2027-03-01', '3/4/27', ';', '\u2212 3'),
      fc.string({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 12 }), (rows) => {
        const text = `date,max,min,soil\n${rows.map((row) => row.map((each) => each.replaceAll(/[\r\n]/g, '')).join(',')).join('\n')}`;
        const read = take(text, { dateOrder: 'mdy' });
        expect(read.accepted + read.rejected + read.empty + read.elsewhere).toBe(read.found);
        expect(read.days.length).toBe(read.accepted);
        expect(read.issues.filter((each) => each.severity === 'error').length).toBe(read.rejected);
      }),
      { numRuns: 300, seed: 3 },
    );
  });
});
