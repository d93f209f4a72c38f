import type { Book, Coverage, Treatment } from '../../../core/book/index.ts';
import { commonWords } from '../../texts/index.ts';
import { productsWords } from '../../texts/shed/index.ts';
import { type Column, choiceOf, withMember } from './column.tsx';
import type { ShelfPlan } from './shelf.ts';

const KINDS = ['spray', 'spread', 'aerate', 'seed'] as const;
const COVERAGES = ['whole', 'spot', 'band'] as const;
const ALONG = ['paving', 'bed', productsWords.treatment.pavingAndBed] as const;

/** The same treatment as another kind, with the first mix or product of the book; as before where there is none. */
function asKind(treatment: Treatment, kind: Treatment['kind'], book: Book): Treatment {
  const { id, name, coverage, flagFirst, flagMin, target } = treatment;
  const base = { id, name, coverage, flagFirst, flagMin, ...(target === undefined ? {} : { target }) };
  const mix = book.mixes[0];
  const granular = book.products.find((product) => product.form === 'granular');
  const seed = book.products.find((product) => product.form === 'seed');
  if (kind === 'aerate') return { ...base, kind, passes: 1 };
  if (kind === 'spray') return mix === undefined ? treatment : { ...base, kind, mixId: mix.id };
  if (kind === 'seed') {
    return seed === undefined ? treatment : { ...base, kind, productId: seed.id, lbPer1000SqFt: 1, passes: 1 };
  }
  return granular === undefined
    ? treatment
    : { ...base, kind, productId: granular.id, rate: { kind: 'product', lbPer1000SqFt: 1 } };
}

function asCoverage(kind: Coverage['kind']): Coverage {
  if (kind === 'spot') return { kind, share: 0.1 };
  if (kind === 'band') return { kind, widthFt: 1, along: ['paving'] };
  return { kind: 'whole' };
}

const applied: Column<Treatment> = {
  kind: 'choice',
  label: productsWords.treatment.applies,
  inTable: true,
  hiddenFor: (t) => t.kind === 'aerate',
  options: (book, t) => {
    const records =
      t.kind === 'spray'
        ? book.mixes
        : book.products.filter((product) => product.form === (t.kind === 'seed' ? 'seed' : 'granular'));
    return records.map(({ id, name }) => ({ value: id, words: name }));
  },
  get: (t) => (t.kind === 'spray' ? t.mixId : t.kind === 'aerate' ? '' : t.productId),
  set: (t, id) => (t.kind === 'spray' ? { ...t, mixId: id } : t.kind === 'aerate' ? t : { ...t, productId: id }),
};

const rate: readonly Column<Treatment>[] = [
  {
    kind: 'choice',
    label: productsWords.treatment.rateCounts,
    hiddenFor: (t) => t.kind !== 'spread',
    options: () => ['product', 'nitrogen', 'phosphate', 'potash'].map((value) => ({ value, words: value })),
    get: (t) => (t.kind !== 'spread' ? '' : t.rate.kind === 'product' ? 'product' : t.rate.nutrient),
    set: (t, what) => {
      if (t.kind !== 'spread') return t;
      const { lbPer1000SqFt } = t.rate;
      if (what === 'product') return { ...t, rate: { kind: 'product', lbPer1000SqFt } };
      const nutrient = (['nitrogen', 'phosphate', 'potash'] as const).find((each) => each === what) ?? 'nitrogen';
      return { ...t, rate: { kind: 'nutrient', nutrient, lbPer1000SqFt } };
    },
  },
  {
    kind: 'figure',
    figure: 'number',
    label: productsWords.treatment.lbPerArea,
    inTable: true,
    positive: true,
    hiddenFor: (t) => t.kind === 'spray' || t.kind === 'aerate',
    get: (t) => (t.kind === 'spread' ? t.rate.lbPer1000SqFt : t.kind === 'seed' ? t.lbPer1000SqFt : null),
    set: (t, lbPer1000SqFt) => {
      if (t.kind === 'spread') return { ...t, rate: { ...t.rate, lbPer1000SqFt } };
      return t.kind === 'seed' ? { ...t, lbPer1000SqFt } : t;
    },
  },
  {
    kind: 'figure',
    figure: 'whole',
    label: productsWords.treatment.passes,
    positive: true,
    hiddenFor: (t) => t.kind !== 'aerate' && t.kind !== 'seed',
    get: (t) => (t.kind === 'aerate' || t.kind === 'seed' ? t.passes : null),
    set: (t, passes) => (t.kind === 'aerate' || t.kind === 'seed' ? { ...t, passes } : t),
  },
];

const target: Column<Treatment> = {
  kind: 'text',
  label: productsWords.treatment.target,
  get: (t) => t.target ?? '',
  set: (t, text) => withMember(t, 'target', text === '' ? undefined : text),
};

const coverage: readonly Column<Treatment>[] = [
  choiceOf<Treatment, Coverage['kind']>(
    productsWords.treatment.covers,
    COVERAGES,
    (t) => t.coverage.kind,
    (t, kind) => ({ ...t, coverage: asCoverage(kind) }),
  ),
  {
    kind: 'figure',
    figure: 'share',
    label: productsWords.treatment.share,
    positive: true,
    most: 1,
    hiddenFor: (t) => t.coverage.kind !== 'spot',
    get: (t) => (t.coverage.kind === 'spot' ? t.coverage.share : null),
    set: (t, share) => (t.coverage.kind === 'spot' ? { ...t, coverage: { ...t.coverage, share } } : t),
  },
  {
    kind: 'figure',
    figure: 'length',
    label: productsWords.treatment.bandWidth,
    positive: true,
    hiddenFor: (t) => t.coverage.kind !== 'band',
    get: (t) => (t.coverage.kind === 'band' ? t.coverage.widthFt : null),
    set: (t, widthFt) => (t.coverage.kind === 'band' ? { ...t, coverage: { ...t.coverage, widthFt } } : t),
  },
  {
    ...choiceOf<Treatment, (typeof ALONG)[number]>(
      productsWords.treatment.along,
      ALONG,
      (t) => {
        if (t.coverage.kind !== 'band' || t.coverage.along.length === 2) return productsWords.treatment.pavingAndBed;
        return t.coverage.along[0] ?? 'paving';
      },
      (t, value) =>
        t.coverage.kind === 'band'
          ? { ...t, coverage: { ...t.coverage, along: value === 'paving and bed' ? ['paving', 'bed'] : [value] } }
          : t,
      false,
    ),
    hiddenFor: (t) => t.coverage.kind !== 'band',
  },
];

function flag(label: string, what: Treatment['flagFirst'][number]): Column<Treatment> {
  return {
    kind: 'flag',
    label,
    get: (t) => t.flagFirst.includes(what),
    set: (t, on) => ({ ...t, flagFirst: on ? [...t.flagFirst, what] : t.flagFirst.filter((each) => each !== what) }),
  };
}

export const treatmentShelf: ShelfPlan<'treatments'> = {
  shelf: 'treatments',
  title: productsWords.treatment.treatments,
  one: commonWords.treatment,
  about: productsWords.treatment.about,
  caution: productsWords.treatment.caution,
  columns: [
    {
      kind: 'text',
      label: productsWords.treatment.name,
      inTable: true,
      get: (t) => t.name,
      set: (t, name) => ({ ...t, name }),
    },
    {
      kind: 'choice',
      label: commonWords.kind,
      inTable: true,
      options: () => KINDS.map((value) => ({ value, words: value })),
      get: (t) => t.kind,
      set: (t, text, book) => {
        const kind = KINDS.find((each) => each === text);
        return kind === undefined ? t : asKind(t, kind, book);
      },
    },
    applied,
    target,
    ...rate,
    ...coverage,
    flag(productsWords.treatment.flagHeads, 'sprinkler-heads'),
    flag(productsWords.treatment.flagLines, 'shallow-lines'),
    flag(productsWords.treatment.flagEdges, 'edges'),
    {
      kind: 'figure',
      figure: 'minutes',
      label: productsWords.treatment.toFlag,
      get: (t) => t.flagMin,
      set: (t, flagMin) => ({ ...t, flagMin }),
    },
  ],
  parts: [],
  create: (book, id) => {
    const base = {
      id,
      name: productsWords.treatment.newTreatment,
      coverage: { kind: 'whole' as const },
      flagFirst: [],
      flagMin: 0,
    };
    const mix = book.mixes[0];
    return mix === undefined ? { ...base, kind: 'aerate', passes: 1 } : { ...base, kind: 'spray', mixId: mix.id };
  },
};
