import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readSources } from './read-sources.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Ways to put a figure or a date into words past the formatter: each would have its own idea of commas, decimals and order. */
const OWN_WAYS =
  /\.toLocale(?:Date|Time)?String\(|\bIntl\.(?:NumberFormat|DateTimeFormat)\b|\.toFixed\(|\.toDateString\(/g;
/** Where figures become words: core/units for all, renderer/format for what the screens add. */
const FORMATTERS = /^(?:core\/units|renderer\/format)\//;
/** Files for other programs, drawings and styles; and folders whose findings name a figure to the decimal that decides. */
const EXACT =
  /^core\/(?:base|calibrate|checks|formats|geometry|intake|passes|plan|reports\/(?:map|style)|roads|sketch|travel)/;

function ownWays(file: string, text: string): readonly string[] {
  return text
    .split('\n')
    .flatMap((line, index) => (line.match(OWN_WAYS) ?? []).map((way) => `${file}:${index + 1} ${way}`));
}

describe('figures and dates', () => {
  test('are put into words in one place, on screens, on paper and on the command line', () => {
    const found = [...readSources(root)]
      .filter(
        ([file]) => /^(?:core|renderer|electron\/cli)\//.test(file) && !FORMATTERS.test(file) && !EXACT.test(file),
      )
      .flatMap(([file, text]) => ownWays(file, text));
    expect(found).toEqual([]);
  });

  test.each(['value.toFixed(2)', 'n.toLocaleString()', "new Intl.NumberFormat('en-US')", 'day.toLocaleDateString()'])(
    'the checker itself finds %s',
    (text) => {
      expect(ownWays(path.posix.join('renderer', 'a.ts'), text)).toHaveLength(1);
    },
  );
});
