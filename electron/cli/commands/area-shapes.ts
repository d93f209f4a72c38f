import { err, ok, type Result } from '../../../core/base/index.ts';
import type { AreaWorking, PlainShape } from '../../../core/book/index.ts';
import { parseLength } from '../../../core/units/index.ts';
import { UsageFault } from '../command.ts';

/** Reads one length in feet: a bare number is in feet, or in metres where the command says so. */
export type ReadLength = (text: string, where: string) => Result<number>;

export function lengthReader(metric: boolean): ReadLength {
  return (text, where) => {
    const typed = text.trim();
    const length = parseLength(metric && /^[\d.]+$/.test(typed) ? `${typed} m` : typed, { where });
    if (!length.ok || length.value < 26_400) return length;
    return err(
      'quantity-out-of-range',
      where,
      `"${typed}" is longer than five miles.`,
      'Check the figure and its unit.',
    );
  };
}

type PlainKind = PlainShape['kind'];

/** Options of each plain shape in the order of its figures. */
export const SHAPE_OPTIONS: Readonly<Record<PlainKind, readonly string[]>> = {
  rectangle: ['length-ft', 'width-ft'],
  triangle: ['base-ft', 'height-ft'],
  circle: ['diameter-ft'],
  trapezoid: ['side-ft', 'other-side-ft', 'apart-ft'],
  ellipse: ['length-ft', 'width-ft'],
};

export function isPlainKind(kind: string): kind is PlainKind {
  return Object.hasOwn(SHAPE_OPTIONS, kind);
}

/** A shape from its figures in the order of SHAPE_OPTIONS. */
export function shapeOf(kind: PlainKind, figures: readonly number[], take: PlainShape['take']): PlainShape {
  const [first = 0, second = 0, third = 0] = figures;
  const part = { take, note: '' };
  switch (kind) {
    case 'rectangle':
      return { ...part, kind, lengthFt: first, widthFt: second };
    case 'triangle':
      return { ...part, kind, baseFt: first, heightFt: second };
    case 'circle':
      return { ...part, kind, diameterFt: first };
    case 'trapezoid':
      return { ...part, kind, sideFt: first, otherSideFt: second, apartFt: third };
    case 'ellipse':
      return { ...part, kind, lengthFt: first, widthFt: second };
  }
}

/** "circle 12" or "rectangle 10 x 20" after --plus and --less. */
export function shapeInWords(text: string, take: PlainShape['take'], read: ReadLength): Result<PlainShape> {
  const option = take === 'add' ? '--plus' : '--less';
  const [, kind = '', rest = ''] = /^\s*(\w+)[\s:]+(.+)$/.exec(text) ?? [];
  const sizes = rest.split(/\s*[x×,;]\s*|(?<=\d)\s+(?=\d)/).filter((each) => each.trim() !== '');
  if (!isPlainKind(kind) || sizes.length !== SHAPE_OPTIONS[kind].length) {
    throw new UsageFault(
      `${option} needs a shape with its lengths, like "rectangle 10 x 20" or "circle 12", not "${text}".`,
    );
  }
  const figures = positives(sizes, option, read);
  return figures.ok ? ok(shapeOf(kind, figures.value, take)) : figures;
}

/** Lengths that all have to be above zero. */
export function positives(texts: readonly string[], where: string, read: ReadLength): Result<readonly number[]> {
  const figures = lengths(texts, where, read);
  if (!figures.ok || figures.value.every((each) => each > 0)) return figures;
  return err('quantity-out-of-range', where, 'A length of zero makes no shape.', 'Enter it as it was measured.');
}

/** Lengths, 0 allowed: an offset may be. */
export function lengths(texts: readonly string[], where: string, read: ReadLength): Result<readonly number[]> {
  const figures: number[] = [];
  for (const text of texts) {
    const figure = read(text, where);
    if (!figure.ok) return figure;
    figures.push(figure.value);
  }
  return ok(figures);
}

/** "12, 14 ft" as two; bare numbers may have spaces between. */
export function partsOf(text: string): readonly string[] {
  const at = /^[\d.,;\s]*$/.test(text) ? /[,;\s]+/ : /[,;]+/;
  return text.split(at).filter((each) => each.trim() !== '');
}

/** Where the sums of shapes and offsets come from. */
export function areaSource(working: AreaWorking): string {
  if (working.kind === 'offsets')
    return "surveyors' trapezoidal rule and Simpson's rule; field work as in Clemson HGIC 1220";
  return working.kind === 'shapes' ? 'plane geometry' : 'How to Measure a Putting Green, abcdocz.com/doc/187946';
}
