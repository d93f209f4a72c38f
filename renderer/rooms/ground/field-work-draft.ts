import { err, ok, type Result } from '../../../core/base/index.ts';
import type { AreaWorking, PlainShape } from '../../../core/book/index.ts';
import { fieldWorkWords } from '../../texts/ground/index.ts';
import { readTyped } from '../../ui/index.ts';

/** Field work while it is typed: figures that are not there yet are null. */
export type AreaDraft =
  | { readonly kind: 'shapes'; readonly shapes: readonly ShapeDraft[] }
  | {
      readonly kind: 'offsets';
      readonly rule: 'trapezoid' | 'simpson';
      readonly intervalFt: number | null;
      readonly offsetsFt: readonly number[];
    }
  | { readonly kind: 'mean-radius'; readonly radiiFt: readonly number[] };

export type ShapeKind = PlainShape['kind'];
export type ShapeDraft = {
  readonly kind: ShapeKind;
  readonly take: PlainShape['take'];
  readonly note: string;
  /** One for each word of SHAPE_FIGURES. */
  readonly figuresFt: readonly (number | null)[];
};

/** What is measured of each plain shape, in the order in which it is typed. */
export const SHAPE_FIGURES: Readonly<Record<ShapeKind, readonly string[]>> = {
  rectangle: ['length', 'width'],
  triangle: ['base', 'height'],
  circle: ['diameter'],
  trapezoid: ['side', fieldWorkWords.draft.otherSide, 'apart'],
  ellipse: ['length', 'width'],
};

export function blankShape(kind: ShapeKind): ShapeDraft {
  return { kind, take: 'add', note: '', figuresFt: SHAPE_FIGURES[kind].map(() => null) };
}

export function blankDraft(kind: AreaDraft['kind']): AreaDraft {
  if (kind === 'shapes') return { kind, shapes: [blankShape('rectangle')] };
  if (kind === 'offsets') return { kind, rule: 'simpson', intervalFt: null, offsetsFt: [] };
  return { kind, radiiFt: [] };
}

export function draftOf(working: AreaWorking): AreaDraft {
  return working.kind === 'shapes' ? { kind: 'shapes', shapes: working.shapes.map(shapeDraft) } : working;
}

function shapeDraft(shape: PlainShape): ShapeDraft {
  return { kind: shape.kind, take: shape.take, note: shape.note, figuresFt: figuresOf(shape) };
}

function figuresOf(shape: PlainShape): readonly number[] {
  switch (shape.kind) {
    case 'rectangle':
    case 'ellipse':
      return [shape.lengthFt, shape.widthFt];
    case 'triangle':
      return [shape.baseFt, shape.heightFt];
    case 'circle':
      return [shape.diameterFt];
    case 'trapezoid':
      return [shape.sideFt, shape.otherSideFt, shape.apartFt];
  }
}

/** The field work of a draft; null while something is missing. */
export function workingOf(draft: AreaDraft): AreaWorking | null {
  switch (draft.kind) {
    case 'shapes': {
      const shapes = draft.shapes.map(shapeOf);
      const whole = shapes.filter((each) => each !== null);
      return whole.length === shapes.length && whole.length > 0 ? { kind: 'shapes', shapes: whole } : null;
    }
    case 'offsets':
      return draft.intervalFt === null || draft.offsetsFt.length < 2
        ? null
        : { ...draft, intervalFt: draft.intervalFt };
    case 'mean-radius':
      return draft.radiiFt.length < 3 ? null : draft;
  }
}

function shapeOf({ kind, take, note, figuresFt }: ShapeDraft): PlainShape | null {
  const [first = null, second = null, third = null] = figuresFt;
  const base = { take, note };
  if (first === null) return null;
  if (kind === 'circle') return { ...base, kind, diameterFt: first };
  if (second === null) return null;
  if (kind === 'triangle') return { ...base, kind, baseFt: first, heightFt: second };
  if (kind !== 'trapezoid') return { ...base, kind, lengthFt: first, widthFt: second };
  return third === null ? null : { ...base, kind, sideFt: first, otherSideFt: second, apartFt: third };
}

/** What a draft still lacks, in words; null where it is whole. */
export function missingWords(draft: AreaDraft): string | null {
  if (workingOf(draft) !== null) return null;
  if (draft.kind === 'shapes')
    return draft.shapes.length === 0 ? fieldWorkWords.draft.addAShape : fieldWorkWords.draft.figuresMissing;
  if (draft.kind === 'mean-radius') return fieldWorkWords.draft.radiiMissing;
  return draft.intervalFt === null ? fieldWorkWords.draft.spacingMissing : fieldWorkWords.draft.offsetsMissing;
}

/**
 * Lengths typed one after the other: "0, 12.5, 19" or "0 12.5 19 ft"; a bare figure is in the unit that is shown.
 * Errors: as for one length, with its place in the list.
 */
export function readLengths(
  text: string,
  where: string,
  system: 'us' | 'metric',
  least: number,
): Result<readonly number[]> {
  const words = splitLengths(text);
  const found: number[] = [];
  for (const [index, word] of words.entries()) {
    const place = fieldWorkWords.draft.figurePlace(where, index + 1);
    const read = readTyped('length', word, place, system);
    if (!read.ok) return read;
    if (read.value < least || (least > 0 && read.value === 0)) {
      return err(
        'quantity-out-of-range',
        place,
        fieldWorkWords.draft.tooSmall(word),
        fieldWorkWords.draft.tooSmallAdvice,
      );
    }
    found.push(read.value);
  }
  return ok(found);
}

/** Figures between commas, semicolons or spaces; a unit behind a space belongs to its figure. */
function splitLengths(text: string): readonly string[] {
  return text
    .replace(/(\d)\s+(?=(?:ft|in|m|cm|yd)\b|['"′″])/gi, '$1')
    .split(/[,;]\s*|\s+/)
    .filter((each) => each !== '');
}
