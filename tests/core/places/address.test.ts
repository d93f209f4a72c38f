import { describe, expect, it } from 'vitest';
import { readAddress, readStreetName } from '../../../core/places/index.ts';

const street = (before: string, name: string, type: string, after = '') => ({ before, name, type, after });

describe('an address is read in parts', () => {
  it.each([
    ['7 Waterhouse Street', 7, street('', 'waterhouse', 'st')],
    ['12 N. Third Ave.', 12, street('n', '3rd', 'ave')],
    ['86A Mount Oak Rd', 86, street('', 'mt oak', 'rd')],
    ['44 Elm St Apt 3', 44, street('', 'elm', 'st')],
    ['44 Elm St #4', 44, street('', 'elm', 'st')],
    ['9 1/2 Elm St', 9, street('', 'elm', 'st')],
    ['7 Long Park (driveway)', 7, street('', 'long', 'park')],
    ['8 Elm Street/106 Oak St', 8, street('', 'elm', 'st')],
    ['Miller house, 5 Oak Ln, Springfield', 5, street('', 'oak', 'ln')],
    ['21 21st St SW', 21, street('', '21st', 'st', 'sw')],
    ['3 Avenue', 3, street('', 'avenue', '')],
    ["6 O'Brien Hwy", 6, street('', 'obrien', 'hwy')],
  ])('%s', (text, number, name) => {
    expect(readAddress(text)).toMatchObject({ number, street: name });
  });

  it('takes the middle number of a pair on the same side, and the first where the pair is none', () => {
    // (1440 - 1420) / 2 = 10; (18 - 14) / 2 = 2
    expect(readAddress('1420-1440 Elm St')?.number).toBe(1430);
    expect(readAddress('14-18 Elm St')?.number).toBe(16);
    expect(readAddress('12-340 Elm St')?.number).toBe(12);
    expect(readAddress('55-51 Elm St')?.number).toBe(55);
  });

  it('takes the ZIP from the end', () => {
    expect(readAddress('12 Elm St, Springfield, OH 45501-1234')?.zip).toBe('45501');
    expect(readAddress('12345 Elm St')?.zip).toBeNull();
  });

  it.each(['', 'Elm Street', 'PO Box', '12', 'Corner of Elm and Oak'])('reads nothing out of "%s"', (text) => {
    expect(readAddress(text)).toBeNull();
  });

  it('reads both ways of writing a street as the same name', () => {
    expect(readStreetName('Mt Auburn St')).toEqual(readStreetName('Mount Auburn Street'));
    expect(readStreetName('Saint Paul Ave')).toEqual(readStreetName('ST. PAUL AVENUE'));
    expect(readStreetName('11th Ct')).toEqual(readStreetName('Eleventh Court'));
  });
});
