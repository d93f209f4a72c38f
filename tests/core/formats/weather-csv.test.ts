import { describe, expect, test } from 'vitest';
import {
  guessWeather,
  guessWeatherColumns,
  looksLikeWeather,
  readTable,
  readWeather,
  type Table,
  type WeatherAnswers,
} from '../../../core/formats/index.ts';

function table(text: string): Table {
  const read = readTable(text, 'weather.csv');
  if (!read.ok) throw new Error(read.error.detail);
  return read.value;
}

function answersFor(of: Table, answers: Partial<WeatherAnswers> = {}): WeatherAnswers {
  const columns = guessWeatherColumns(of.columns);
  return { columns, dateOrder: 'ymd', airUnit: 'F', windUnit: 'mph', rainUnit: 'in', ...answers };
}

describe('a table of weather by the hour', () => {
  test('is known by its columns, with the units that they state', () => {
    const found = table(
      'Date,Hour,Wind dir,Wind speed (mph),Air temp (F),Dew point,Rain (in)\n2027-04-05,13,S,6,61,50,0\n',
    );
    expect(looksLikeWeather(found)).toBe(true);
    expect(guessWeatherColumns(found.columns)).toEqual({ date: 0, time: 1, wind: 3, air: 4, rain: 6 });
    const guess = guessWeather(found, guessWeatherColumns(found.columns));
    expect([guess.wind, guess.rain, guess.air.unit, guess.dates.example]).toEqual(['mph', 'in', 'F', null]);
    expect(readWeather(found, answersFor(found), 'weather.csv').days).toEqual([
      { on: '2027-04-05', hours: [{ hour: 13, windMph: 6, airF: 61, rainIn: 0 }] },
    ]);
  });

  test('asks for units that it does not state, and for Celsius in a Fahrenheit column', () => {
    const found = table('date,hour,wind,temp (F),rain\n2027-04-05,13,6,16,0\n');
    const guess = guessWeather(found, guessWeatherColumns(found.columns));
    expect([guess.wind, guess.rain, guess.air.unit]).toEqual([null, null, null]);
    expect(guess.air.why).toMatch(/looks like Celsius/);
  });

  test('asks for the order of dates that can be read in two ways', () => {
    const found = table('date,hour,wind mph\n04/05/2027,13,6\n');
    expect(guessWeather(found, guessWeatherColumns(found.columns)).dates.example?.readings).toHaveLength(2);
    const day = (dateOrder: 'mdy' | 'dmy') => readWeather(found, answersFor(found, { dateOrder }), 'w').days[0]?.on;
    expect([day('mdy'), day('dmy')]).toEqual(['2027-04-05', '2027-05-04']);
  });

  test('is brought to mph, F and inches', () => {
    const found = table('date,hour,wind,temp,rain\n2027-04-05,8,10,20,25.4\n');
    const hour = (windUnit: WeatherAnswers['windUnit']) =>
      readWeather(found, answersFor(found, { windUnit, airUnit: 'C', rainUnit: 'mm' }), 'w').days[0]?.hours[0];
    // 10 km/h is 6.21 mph, 10 m/s 22.37 mph, 10 knots 11.51 mph; 20 °C is 68 °F; 25.4 mm is an inch.
    expect(hour('km/h')).toEqual({ hour: 8, windMph: 6.21, airF: 68, rainIn: 1 });
    expect(hour('m/s')?.windMph).toBe(22.37);
    expect(hour('kn')?.windMph).toBe(11.51);
  });

  test('may have its time with the date, or written with am and pm', () => {
    const joined = table('timestamp,wind (mph)\n2027-04-05T07:15:00,4\n2027-04-05 13:00,9\n');
    expect(looksLikeWeather(joined)).toBe(true);
    expect(readWeather(joined, answersFor(joined), 'w').days[0]?.hours.map((each) => each.hour)).toEqual([7, 13]);
    const spoken = table('date,time,wind (mph)\n2027-04-05,12:00 am,4\n2027-04-05,1 pm,5\n2027-04-05,12 pm,6\n');
    expect(readWeather(spoken, answersFor(spoken), 'w').days[0]?.hours.map((each) => each.hour)).toEqual([0, 12, 13]);
  });

  test('with several rows an hour has the strongest wind, the mean of the air and the sum of the rain', () => {
    const found = table('date,time,wind mph,air F,rain in\n2027-04-05,13:00,4,60,0.1\n2027-04-05,13:30,9,62,T\n');
    expect(readWeather(found, answersFor(found), 'w').days[0]?.hours).toEqual([
      { hour: 13, windMph: 9, airF: 61, rainIn: 0.105 },
    ]);
  });

  test('names every row that it cannot read, and the counts add up', () => {
    const found = table(
      [
        'date,hour,wind mph,air F,rain in',
        '2027-04-05,13,6,60,0',
        '2027-02-30,13,6,60,0',
        '2027-04-05,24,6,60,0',
        '2027-04-05,14,breezy,60,0',
        '2027-04-05,15,6,480,0',
        '2027-04-05,16,-3,60,0',
        '2027-04-05,17,,,',
        '2027-04-05,18,,-9999,0.2',
      ].join('\n'),
    );
    const read = readWeather(found, answersFor(found), 'w.csv');
    expect(read.issues.map((each) => [each.code, each.where])).toEqual([
      ['date-unreadable', 'w.csv, row 3'],
      ['time-unreadable', 'w.csv, row 4'],
      ['row-malformed', 'w.csv, row 5'],
      ['row-malformed', 'w.csv, row 6'],
      ['row-malformed', 'w.csv, row 7'],
    ]);
    expect([read.found, read.accepted, read.rejected, read.empty]).toEqual([8, 2, 5, 1]);
    expect(read.days[0]?.hours).toEqual([
      { hour: 13, windMph: 6, airF: 60, rainIn: 0 },
      { hour: 18, rainIn: 0.2 },
    ]);
  });
});
