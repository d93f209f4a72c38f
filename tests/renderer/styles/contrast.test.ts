import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const css = readFileSync(new URL('../../../renderer/styles/tokens.css', import.meta.url), 'utf8');

type Colours = ReadonlyMap<string, string>;

/** The colours of one block of the style sheet, by name: the first of each pair is for light, the second for dark. */
function coloursAfter(start: string, which: 'light' | 'dark'): Colours {
  const from = css.indexOf(':root {', css.indexOf(start));
  const block = css.slice(from, css.indexOf('}', from));
  const pairs = block.matchAll(/--([\w-]+):\s*light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g);
  return new Map([...pairs].map(([, name, light, dark]) => [name!, which === 'light' ? light! : dark!]));
}

const MORE = '@media (prefers-contrast: more)';
const SCHEMES = {
  light: coloursAfter(':root {', 'light'),
  dark: coloursAfter(':root {', 'dark'),
  'more contrast': coloursAfter(MORE, 'light'),
  'more contrast, dark': coloursAfter(MORE, 'dark'),
} as const;

/** Relative luminance and contrast ratio as WCAG 2.2 defines them (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio). */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((from) => {
    const share = Number.parseInt(colour.slice(from, from + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(first: string, second: string): number {
  const [light = 0, dark = 0] = [luminance(first), luminance(second)].sort((left, right) => right - left);
  return (light + 0.05) / (dark + 0.05);
}

/** WCAG 2.2, 1.4.3: text needs 4.5 to 1; 1.4.11: graphics need 3 to 1. */
const TEXT: readonly (readonly [string, string])[] = [
  ...['ink', 'ink-2', 'accent', 'caution', 'stop'].flatMap((text) => [
    [text, 'paper'] as const,
    [text, 'sheet'] as const,
    [text, 'tint'] as const,
  ]),
  ['water', 'sheet'],
  ['on-accent', 'accent'],
  ['sheet', 'ink'],
];
const GRAPHICS: readonly (readonly [string, string])[] = [
  ...['water', 'dry', 'nurse', 'accent', 'focus', 'rule-strong'].flatMap((line) => [
    [line, 'sheet'] as const,
    [line, 'paper'] as const,
  ]),
  ['accent', 'ground'],
  ['accent', 'turf-fill'],
  ['ink', 'ground'],
  ...['day-1', 'day-2', 'day-3', 'day-4', 'day-5', 'day-6'].flatMap((tone) => [
    [tone, 'sheet'] as const,
    [tone, 'ground'] as const,
  ]),
];

test('the formula gives the known ratios', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  // #767676 on white is the well-known grey that just passes: 4.54 to 1 (WebAIM contrast checker, from memory).
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
});

describe.each(Object.entries(SCHEMES))('%s', (name, colours) => {
  // Where more is asked for, text is held to 1.4.6 (7 to 1), and graphics to what text needs otherwise.
  const [least, leastGraphics] = name.startsWith('more') ? [7, 4.5] : [4.5, 3];

  test.each(TEXT)('%s can be read on %s', (text, ground) => {
    expect(contrast(colours.get(text)!, colours.get(ground)!)).toBeGreaterThanOrEqual(least);
  });

  test.each(GRAPHICS)('%s can be seen on %s', (line, ground) => {
    expect(contrast(colours.get(line)!, colours.get(ground)!)).toBeGreaterThanOrEqual(leastGraphics);
  });
});

test('every look has the same colours', () => {
  const names = [...SCHEMES.light.keys()];
  for (const colours of Object.values(SCHEMES)) expect([...colours.keys()]).toEqual(names);
  const system = css.slice(css.indexOf('@media (forced-colors: active)'));
  expect(names.filter((name) => !system.includes(`--${name}: `))).toEqual([]);
});
