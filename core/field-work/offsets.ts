import type { FieldWords } from './figures.ts';
import type { FieldArea } from './types.ts';

/**
 * Area beside a base line from widths measured across at equal distances, by trapezoids between every two of them:
 * d (h1/2 + h2 + ... + hn/2). Surveyors' trapezoidal rule (Clemson HGIC 1220 describes the field work).
 * @param intervalFt distance between two offsets, ft
 * @param offsetsFt at least two widths, ft; 0 where the lawn begins or ends in a point
 */
export function trapezoidArea(intervalFt: number, offsetsFt: readonly number[], words: FieldWords): FieldArea {
  const first = offsetsFt[0] ?? 0;
  const last = offsetsFt.at(-1) ?? 0;
  const middle = offsetsFt.slice(1, -1);
  const areaSqFt = intervalFt * ((first + last) / 2 + total(middle));
  const figure = words.bareLength;
  const between = middle.length === 0 ? '' : ` + ${middle.map(figure).join(' + ')}`;
  const lines = [
    'trapezoid rule: interval × (half of the first and last offset + all between)',
    `${figure(intervalFt)} × ((${figure(first)} + ${figure(last)}) / 2${between}) = ${words.area(areaSqFt)}`,
  ];
  return { areaSqFt, lines };
}

/**
 * The same by Simpson's rule, which follows curved edges: d/3 (h1 + hn + 4 even + 2 odd). It needs an odd number of offsets;
 * with an even number the last gap is added as a trapezoid.
 */
export function simpsonArea(intervalFt: number, offsetsFt: readonly number[], words: FieldWords): FieldArea {
  const isOdd = offsetsFt.length % 2 === 1;
  const curved = isOdd ? offsetsFt : offsetsFt.slice(0, -1);
  if (curved.length < 3) return trapezoidArea(intervalFt, offsetsFt, words);
  const main = simpsonPart(intervalFt, curved, words);
  if (isOdd) return main;
  const gap = offsetsFt.slice(-2);
  const areaOfGap = (intervalFt * total(gap)) / 2;
  const areaSqFt = main.areaSqFt + areaOfGap;
  const figure = words.bareLength;
  return {
    areaSqFt,
    lines: [
      ...main.lines,
      `last gap as a trapezoid: ${figure(intervalFt)} × (${gap.map(figure).join(' + ')}) / 2 = ${words.area(areaOfGap)}`,
      `together ${words.area(areaSqFt)}`,
    ],
  };
}

function simpsonPart(intervalFt: number, offsetsFt: readonly number[], words: FieldWords): FieldArea {
  const ends = (offsetsFt[0] ?? 0) + (offsetsFt.at(-1) ?? 0);
  const even = offsetsFt.slice(1, -1).filter((_, index) => index % 2 === 0);
  const odd = offsetsFt.slice(1, -1).filter((_, index) => index % 2 === 1);
  const areaSqFt = (intervalFt / 3) * (ends + 4 * total(even) + 2 * total(odd));
  const figure = words.bareLength;
  const twice = odd.length === 0 ? '' : ` + 2 × (${odd.map(figure).join(' + ')})`;
  const sum = `${figure(offsetsFt[0] ?? 0)} + ${figure(offsetsFt.at(-1) ?? 0)} + 4 × (${even.map(figure).join(' + ')})${twice}`;
  return {
    areaSqFt,
    lines: [
      "Simpson's rule: interval / 3 × (first + last + 4 × second, fourth … + 2 × third, fifth …)",
      `${figure(intervalFt)} / 3 × (${sum}) = ${words.area(areaSqFt)}`,
    ],
  };
}

export function total(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each, 0);
}
