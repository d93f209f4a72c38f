import { type Mix, PRODUCT_UNITS, type Product } from '../../../core/book/index.ts';
import { formatProductRate } from '../../../core/units/index.ts';
import { type Column, choiceOf } from './column.tsx';
import { part } from './part.tsx';
import type { ShelfPlan } from './shelf.ts';

const FORMS = ['liquid', 'dry', 'granular', 'seed'] as const;
type LabelKey =
  | 'mostPerApplication'
  | 'mostPerYear'
  | 'leastDaysBetween'
  | 'leastCarrierGalPer1000SqFt'
  | 'mostCarrierGalPer1000SqFt'
  | 'mostWindMph';

/** A limit of the label: empty until somebody writes it. */
function limit(label: string, figure: 'number' | 'whole' | 'carrier' | 'speed', key: LabelKey): Column<Product> {
  return {
    kind: 'figure',
    figure,
    label,
    positive: true,
    get: (p) => p.label[key] ?? null,
    set: (p, value) => ({ ...p, label: { ...p.label, [key]: value } }),
    unset: (p) => {
      const { [key]: _, ...rest } = p.label;
      return { ...p, label: rest };
    },
  };
}

function nutrient(label: string, key: 'nitrogen' | 'phosphate' | 'potash'): Column<Product> {
  const none = { nitrogen: 0, phosphate: 0, potash: 0 };
  return {
    kind: 'figure',
    figure: 'share',
    label,
    most: 1,
    hiddenFor: (p) => p.form === 'seed',
    get: (p) => p.analysis?.[key] ?? null,
    set: (p, value) => ({ ...p, analysis: { ...(p.analysis ?? none), [key]: value } }),
    unset: (p) => (p.analysis === undefined ? p : { ...p, analysis: { ...p.analysis, [key]: 0 } }),
  };
}

const columns: readonly Column<Product>[] = [
  { kind: 'text', label: 'name', inTable: true, get: (p) => p.name, set: (p, name) => ({ ...p, name }) },
  choiceOf<Product, Product['form']>(
    'form',
    FORMS,
    (p) => p.form,
    (p, form) => ({ ...p, form }),
  ),
  choiceOf<Product, Product['unit']>(
    'measured in',
    PRODUCT_UNITS,
    (p) => p.unit,
    (p, unit) => ({ ...p, unit }),
  ),
  {
    kind: 'figure',
    figure: 'weight',
    label: 'bag',
    inTable: true,
    positive: true,
    hiddenFor: (p) => p.form === 'liquid' || p.form === 'dry',
    get: (p) => p.bagLb ?? null,
    set: (p, bagLb) => ({ ...p, bagLb }),
    unset: ({ bagLb: _, ...product }) => product,
  },
  {
    kind: 'figure',
    figure: 'money',
    label: 'price per unit',
    inTable: true,
    get: (p) => p.pricePerUnit,
    set: (p, pricePerUnit) => ({ ...p, pricePerUnit }),
  },
  {
    kind: 'shown',
    label: 'label: most at once',
    inTable: true,
    show: (p) => {
      const most = p.label.mostPerApplication;
      return most === undefined ? <span className="caution">not entered</span> : formatProductRate(most, p.unit);
    },
  },
  { kind: 'shown', label: 'note', inTable: true, show: (p) => <span className="quiet">{p.note}</span> },
  nutrient('nitrogen', 'nitrogen'),
  nutrient('phosphate', 'phosphate'),
  nutrient('potash', 'potash'),
  limit('most at once, per 1,000 ft²', 'number', 'mostPerApplication'),
  limit('most in a year, per 1,000 ft²', 'number', 'mostPerYear'),
  limit('least days between', 'whole', 'leastDaysBetween'),
  limit('least carrier', 'carrier', 'leastCarrierGalPer1000SqFt'),
  limit('most carrier', 'carrier', 'mostCarrierGalPer1000SqFt'),
  limit('most wind', 'speed', 'mostWindMph'),
  {
    kind: 'flag',
    label: 'needs agitation',
    get: (p) => p.label.needsAgitation,
    set: (p, needsAgitation) => ({ ...p, label: { ...p.label, needsAgitation } }),
  },
  {
    kind: 'text',
    label: 'registration',
    get: (p) => p.label.registration,
    set: (p, registration) => ({ ...p, label: { ...p.label, registration } }),
  },
  { kind: 'text', label: 'notes', get: (p) => p.note, set: (p, note) => ({ ...p, note }) },
];

const LABEL_CAUTION =
  'Rates and limits come from the label in your hand; the program never supplies one. The label is the law: wear what it asks for, mind wind, water, people and pets, and keep to local rules.';

export const productShelf: ShelfPlan<'products'> = {
  shelf: 'products',
  title: 'Products',
  one: 'product',
  about: 'What is applied, with the limits that its label sets. You enter them from the label.',
  caution: LABEL_CAUTION,
  columns,
  parts: [],
  create: (_book, id) => ({
    id,
    name: 'New product',
    form: 'liquid',
    unit: 'fl-oz',
    pricePerUnit: 0,
    label: { registration: '', needsAgitation: false, note: '' },
    note: '',
  }),
};

type MixPart = Mix['parts'][number];

export const mixShelf: ShelfPlan<'mixes'> = {
  shelf: 'mixes',
  title: 'Mixes',
  one: 'mix',
  about: 'Tank recipes: how much water per 1,000 ft², and what goes into it.',
  caution: LABEL_CAUTION,
  columns: [
    { kind: 'text', label: 'name', inTable: true, get: (m) => m.name, set: (m, name) => ({ ...m, name }) },
    {
      kind: 'figure',
      figure: 'carrier',
      label: 'carrier',
      inTable: true,
      positive: true,
      get: (m) => m.carrierGalPer1000SqFt,
      set: (m, carrierGalPer1000SqFt) => ({ ...m, carrierGalPer1000SqFt }),
    },
    {
      kind: 'shown',
      label: 'holds',
      inTable: true,
      show: (m, book) =>
        m.parts
          .map((each) => book.products.find((product) => product.id === each.productId)?.name ?? each.productId)
          .join(', '),
    },
    {
      kind: 'flag',
      label: 'needs agitation',
      inTable: true,
      get: (m) => m.needsAgitation,
      set: (m, needsAgitation) => ({ ...m, needsAgitation }),
    },
    {
      kind: 'figure',
      figure: 'minutes',
      label: 'to rinse',
      get: (m) => m.rinseMin,
      set: (m, rinseMin) => ({ ...m, rinseMin }),
    },
    {
      kind: 'figure',
      figure: 'volume',
      label: 'rinse water',
      get: (m) => m.rinseGal,
      set: (m, rinseGal) => ({ ...m, rinseGal }),
    },
    {
      kind: 'figure',
      figure: 'volume',
      label: 'most left over',
      get: (m) => m.reserveGal ?? null,
      set: (m, reserveGal) => ({ ...m, reserveGal }),
      unset: ({ reserveGal: _, ...mix }) => mix,
    },
  ],
  parts: [
    part<Mix, MixPart>({
      title: 'Products in it, per 1,000 ft²',
      one: 'product',
      rows: (m) => m.parts,
      replace: (m, parts) => ({ ...m, parts }),
      columns: [
        {
          kind: 'choice',
          label: 'product',
          options: (book) => book.products.map((product) => ({ value: product.id, words: product.name })),
          get: (p) => p.productId,
          set: (p, productId) => ({ ...p, productId }),
        },
        {
          kind: 'figure',
          figure: 'number',
          label: 'amount',
          positive: true,
          get: (p) => p.amountPer1000SqFt,
          set: (p, amountPer1000SqFt) => ({ ...p, amountPer1000SqFt }),
        },
        {
          kind: 'shown',
          label: 'unit',
          show: (p, book) =>
            (book.products.find((product) => product.id === p.productId)?.unit ?? '').replace('-', ' '),
        },
      ],
      name: (p, book) => book.products.find((product) => product.id === p.productId)?.name ?? p.productId,
      keyOf: (p) => p.productId,
      create: (m, book) => {
        const free = book.products.find((product) => !m.parts.some((each) => each.productId === product.id));
        return free === undefined
          ? 'Every product of the shed is in this mix'
          : { productId: free.id, amountPer1000SqFt: 1 };
      },
    }),
  ],
  create: (_book, id) => ({
    id,
    name: 'New mix',
    carrierGalPer1000SqFt: 1,
    parts: [],
    needsAgitation: false,
    rinseMin: 0,
    rinseGal: 0,
  }),
};
