import { type Mix, PRODUCT_UNITS, type Product } from '../../../core/book/index.ts';
import { formatProductRate } from '../../../core/units/index.ts';
import { type Column, choiceOf, withMember, yesNoOf } from './column.tsx';
import { part } from './part.tsx';
import type { ShelfPlan } from './shelf.ts';

type Active = NonNullable<Product['actives']>[number];

const FORMS = ['liquid', 'dry', 'granular', 'seed'] as const;
type LabelKey =
  | 'mostPerApplication'
  | 'mostPerYear'
  | 'leastDaysBetween'
  | 'leastCarrierGalPer1000SqFt'
  | 'mostCarrierGalPer1000SqFt'
  | 'mostWindMph'
  | 'leastAirF'
  | 'mostAirF'
  | 'dryHours'
  | 'daysBeforeSeeding'
  | 'daysAfterSeeding';

/** Members of a product that it can be without. */
type FreeKey = 'lbPerGal' | 'onHand' | 'leadDays';

/** A limit of the label: empty until somebody writes it. */
function limit(
  label: string,
  figure: 'number' | 'whole' | 'carrier' | 'speed' | 'temperature',
  key: LabelKey,
): Column<Product> {
  return {
    kind: 'figure',
    figure,
    label,
    positive: figure !== 'temperature',
    get: (p) => p.label[key] ?? null,
    set: (p, value) => ({ ...p, label: { ...p.label, [key]: value } }),
    unset: (p) => {
      const { [key]: _, ...rest } = p.label;
      return { ...p, label: rest };
    },
  };
}

function free(label: string, figure: 'number' | 'whole' | 'weight', key: FreeKey, inTable = false): Column<Product> {
  return {
    kind: 'figure',
    figure,
    label,
    inTable,
    positive: key === 'lbPerGal',
    hiddenFor: (p) => key === 'lbPerGal' && p.unit !== 'fl-oz',
    get: (p) => p[key] ?? null,
    set: (p, value) => ({ ...p, [key]: value }),
    unset: ({ [key]: _, ...product }) => product as Product,
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
  free('in the store', 'number', 'onHand', true),
  free('days from order to store', 'whole', 'leadDays'),
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
  free('weight of a gallon', 'weight', 'lbPerGal'),
  nutrient('nitrogen', 'nitrogen'),
  nutrient('phosphate', 'phosphate'),
  nutrient('potash', 'potash'),
  limit('most at once, per 1,000 ft²', 'number', 'mostPerApplication'),
  limit('most in a year, per 1,000 ft²', 'number', 'mostPerYear'),
  limit('least days between', 'whole', 'leastDaysBetween'),
  limit('least carrier', 'carrier', 'leastCarrierGalPer1000SqFt'),
  limit('most carrier', 'carrier', 'mostCarrierGalPer1000SqFt'),
  limit('most wind', 'speed', 'mostWindMph'),
  limit('least air temperature', 'temperature', 'leastAirF'),
  limit('most air temperature', 'temperature', 'mostAirF'),
  limit('dry hours afterwards', 'number', 'dryHours'),
  limit('days before seed', 'whole', 'daysBeforeSeeding'),
  limit('days after seed', 'whole', 'daysAfterSeeding'),
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
  {
    kind: 'text',
    label: 'keep off until',
    get: (p) => p.label.reentry ?? '',
    set: (p, text) => ({ ...p, label: withMember(p.label, 'reentry', text === '' ? undefined : text) }),
  },
  yesNoOf<Product>(
    'restricted use',
    (p) => p.label.restrictedUse,
    (p, value) => ({ ...p, label: withMember(p.label, 'restrictedUse', value) }),
  ),
  yesNoOf<Product>(
    'is a pesticide',
    (p) => p.pesticide,
    (p, value) => withMember(p, 'pesticide', value),
  ),
  {
    kind: 'text',
    label: 'sort, for records and notices',
    get: (p) => p.type ?? '',
    set: (p, text) => withMember(p, 'type', text === '' ? undefined : text),
  },
  {
    kind: 'text',
    label: 'maker',
    get: (p) => p.maker ?? '',
    set: (p, text) => withMember(p, 'maker', text === '' ? undefined : text),
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
  parts: [
    part<Product, Active>({
      title: 'Active ingredients',
      one: 'active ingredient',
      rows: (p) => p.actives ?? [],
      replace: (p, actives) => ({ ...p, actives }),
      columns: [
        { kind: 'text', label: 'name', get: (a) => a.name, set: (a, name) => ({ ...a, name }) },
        {
          kind: 'figure',
          figure: 'fine-number',
          label: 'lb in one unit',
          positive: true,
          get: (a) => a.lbPerUnit,
          set: (a, lbPerUnit) => ({ ...a, lbPerUnit }),
        },
      ],
      name: (a) => a.name,
      keyOf: (a) => a.name,
      create: (p) => ({ name: `ingredient ${(p.actives ?? []).length + 1}`, lbPerUnit: 1 }),
    }),
  ],
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
