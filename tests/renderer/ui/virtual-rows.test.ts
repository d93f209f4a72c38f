import { describe, expect, test, vi } from 'vitest';

vi.mock('lucide-react', () => ({}));
const { LIST_KEYS, rowForKey, rowForText, rowsInView, scrollToShow } = await import('../../../renderer/ui/index.ts');

describe('rows in view', () => {
  test('are those seen and eight more on each side', () => {
    // 480 px from 4,800 px on, rows of 48 px: rows 100 to 109 are seen.
    expect(rowsInView(2000, 48, 4800, 480)).toEqual({ first: 92, end: 118 });
  });

  test('stay within the list', () => {
    expect(rowsInView(2000, 48, 0, 480)).toEqual({ first: 0, end: 18 });
    expect(rowsInView(5, 48, 0, 480)).toEqual({ first: 0, end: 5 });
    expect(rowsInView(0, 48, 0, 480)).toEqual({ first: 0, end: 0 });
    // The list became shorter than it was scrolled.
    expect(rowsInView(3, 48, 9600, 480)).toEqual({ first: 3, end: 3 });
  });
});

test('a row is scrolled to only as far as it takes', () => {
  expect(scrollToShow(5, 48, 0, 480)).toBe(0);
  expect(scrollToShow(10, 48, 0, 480)).toBe(48);
  expect(scrollToShow(2, 48, 480, 480)).toBe(96);
});

describe('keys', () => {
  test('move by one, by a page, and to the ends', () => {
    expect(rowForKey('ArrowDown', 3, 10, 4)).toBe(4);
    expect(rowForKey('ArrowUp', 3, 10, 4)).toBe(2);
    expect(rowForKey('PageDown', 3, 10, 4)).toBe(7);
    expect(rowForKey('PageUp', 3, 10, 4)).toBe(0);
    expect(rowForKey('Home', 3, 10, 4)).toBe(0);
    expect(rowForKey('End', 3, 10, 4)).toBe(9);
  });

  test('begin at an end where nothing is selected, and stop at the ends', () => {
    expect(rowForKey('ArrowDown', -1, 10, 4)).toBe(0);
    expect(rowForKey('ArrowUp', -1, 10, 4)).toBe(9);
    expect(rowForKey('ArrowDown', 9, 10, 4)).toBe(9);
    expect(rowForKey('ArrowUp', 0, 10, 4)).toBe(0);
  });

  test('are those that it names for the page of keys', () => {
    for (const key of LIST_KEYS) expect(rowForKey(key, 3, 10, 4), key).not.toBeNull();
  });

  test('with another meaning are left alone, and so is an empty list', () => {
    expect(rowForKey('Tab', 3, 10, 4)).toBeNull();
    expect(rowForKey('ArrowDown', -1, 0, 4)).toBeNull();
  });
});

describe('typing', () => {
  const names = ['Alder 1', 'Barley 1', 'Barley 2', 'Clover 1'];
  const find = (index: number, typed: string) => rowForText((row) => names[row]!, names.length, index, typed);

  test('one letter goes on to the next row that begins with it, round the end', () => {
    expect(find(-1, 'b')).toBe(1);
    expect(find(1, 'b')).toBe(2);
    expect(find(2, 'b')).toBe(1);
  });

  test('a longer word may stay where it is', () => {
    expect(find(1, 'bar')).toBe(1);
    expect(find(1, 'barley 2')).toBe(2);
  });

  test('where no name begins so, a word of a name does', () => {
    const streets = ['6 Teasel Lane', '8 Oak Road', '2 Teasel Lane'];
    const row = (index: number, typed: string) => rowForText((at) => streets[at]!, streets.length, index, typed);
    expect(row(-1, 't')).toBe(0);
    expect(row(0, 't')).toBe(2);
    expect(row(0, 'oak r')).toBe(1);
    expect(row(-1, '2')).toBe(2);
    expect(row(-1, 'easel')).toBe(-1);
  });

  test('what no row begins with finds none', () => {
    expect(find(0, 'x')).toBe(-1);
  });
});
