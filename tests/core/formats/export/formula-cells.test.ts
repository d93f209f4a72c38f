import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../../../core/formats/csv/table.ts';
import { tableText } from '../../../../core/formats/export/table.ts';

/** What spreadsheets work out: OWASP, "CSV Injection" (from memory): = + - @, tab and the ends of lines, in full width too. */
const FORMULAS = ['=1+1', '+1', '-1+2', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1', '＋1', '－1', '＠A', "'=1", "''=1"];
/** Cells as they are, by a parser that is not the program's own. */
const cellsOf = (text: string): readonly (readonly string[])[] => parse(text, { record_delimiter: '\r\n' });

describe('a table for other programs', () => {
  it.each(FORMULAS)('makes %j harmless, and is read back as it was', (cell) => {
    const text = tableText([
      ['name', 'other'],
      [cell, 'x'],
    ]);
    const [, row] = cellsOf(text);
    expect(row).toEqual([`'${cell}`, 'x']);
    const read = readTable(text, 'table');
    expect(read.ok && read.value.rows[0]?.cells).toEqual([cell.trim(), 'x']);
  });

  it.each(['-83.25', '0', '-7', "O'Brien", '12 - 14 Elm', "'tis"])('leaves %j alone', (cell) => {
    expect(cellsOf(tableText([[cell]]))).toEqual([[cell]]);
  });

  it('holds no cell that begins like a formula, whatever goes in, and loses nothing', () => {
    const cell = fc.string({ unit: 'grapheme' });
    const table = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1 });
    fc.assert(
      fc.property(table, (rows) => {
        const cells = cellsOf(tableText(rows.map((row) => ['x', ...row])));
        for (const cell of cells.flat()) expect(cell).not.toMatch(/^[=+@\t\r\n]|^-(?!\d+(?:\.\d+)?$)/);
        expect(
          cells.map((row) => row.slice(1).map((cell) => cell.replace(/^'(?='*[=+\-@\t\r\n＝＋－＠])/, ''))),
        ).toEqual(rows);
      }),
    );
  });
});
