import type { PlainShape } from '../book/index.ts';
import type { FieldWords } from './figures.ts';

/** Area of one plain shape, ft2, whether it is added or taken off (plane geometry). */
export function plainShapeArea(shape: PlainShape): number {
  switch (shape.kind) {
    case 'rectangle':
      return shape.lengthFt * shape.widthFt;
    case 'triangle':
      return (shape.baseFt * shape.heightFt) / 2;
    case 'circle':
      return Math.PI * (shape.diameterFt / 2) ** 2;
    case 'trapezoid':
      return ((shape.sideFt + shape.otherSideFt) / 2) * shape.apartFt;
    case 'ellipse':
      return (Math.PI / 4) * shape.lengthFt * shape.widthFt;
  }
}

/** "less rectangle, drive: 10 × 20 = 200 ft²". */
export function plainShapeLine(shape: PlainShape, words: FieldWords): string {
  const note = shape.note === '' ? '' : `, ${shape.note}`;
  const sign = shape.take === 'subtract' ? 'less ' : '';
  return `${sign}${shape.kind}${note}: ${arithmetic(shape, words.bareLength)} = ${words.area(plainShapeArea(shape))}`;
}

function arithmetic(shape: PlainShape, figure: (lengthFt: number) => string): string {
  switch (shape.kind) {
    case 'rectangle':
      return `${figure(shape.lengthFt)} × ${figure(shape.widthFt)}`;
    case 'triangle':
      return `${figure(shape.baseFt)} × ${figure(shape.heightFt)} / 2`;
    case 'circle':
      return `π × (${figure(shape.diameterFt)} / 2)²`;
    case 'trapezoid':
      return `(${figure(shape.sideFt)} + ${figure(shape.otherSideFt)}) / 2 × ${figure(shape.apartFt)}`;
    case 'ellipse':
      return `π / 4 × ${figure(shape.lengthFt)} × ${figure(shape.widthFt)}`;
  }
}
