import { type Mix, PRODUCT_UNITS, type Product } from '../../../core/book/index.ts';
import { formatProductRate } from '../../../core/units/index.ts';
import { commonWords } from '../../texts/index.ts';
import { productsWords } from '../../texts/shed/index.ts';
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
  {
    kind: 'text',
    label: productsWords.product.name,
    inTable: true,
    get: (p) => p.name,
    set: (p, name) => ({ ...p, name }),
  },
  choiceOf<Product, Product['form']>(
    productsWords.product.form,
    FORMS,
    (p) => p.form,
    (p, form) => ({ ...p, form }),
  ),
  choiceOf<Product, Product['unit']>(
    productsWords.product.measuredIn,
    PRODUCT_UNITS,
    (p) => p.unit,
    (p, unit) => ({ ...p, unit }),
  ),
  {
    kind: 'figure',
    figure: 'weight',
    label: productsWords.product.bag,
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
    label: productsWords.product.pricePerUnit,
    inTable: true,
    get: (p) => p.pricePerUnit,
    set: (p, pricePerUnit) => ({ ...p, pricePerUnit }),
  },
  free(productsWords.product.inTheStore, 'number', 'onHand', true),
  free(productsWords.product.daysFromOrderStore, 'whole', 'leadDays'),
  {
    kind: 'shown',
    label: productsWords.product.mostAtOnce,
    inTable: true,
    show: (p) => {
      const most = p.label.mostPerApplication;
      return most === undefined ? (
        <span className="caution">{productsWords.product.notEntered}</span>
      ) : (
        formatProductRate(most, p.unit)
      );
    },
  },
  free(productsWords.product.weightGallon, 'weight', 'lbPerGal'),
  nutrient(commonWords.nitrogen, 'nitrogen'),
  nutrient(commonWords.phosphate, 'phosphate'),
  nutrient(commonWords.potash, 'potash'),
  limit(productsWords.product.mostPerApplication, 'number', 'mostPerApplication'),
  limit(productsWords.product.mostPerYear, 'number', 'mostPerYear'),
  limit(productsWords.product.leastDaysBetween, 'whole', 'leastDaysBetween'),
  limit(productsWords.product.leastCarrier, 'carrier', 'leastCarrierGalPer1000SqFt'),
  limit(productsWords.product.mostCarrier, 'carrier', 'mostCarrierGalPer1000SqFt'),
  limit(productsWords.product.mostWind, 'speed', 'mostWindMph'),
  limit(productsWords.product.leastAirTemperature, 'temperature', 'leastAirF'),
  limit(productsWords.product.mostAirTemperature, 'temperature', 'mostAirF'),
  limit(productsWords.product.dryHoursAfterwards, 'number', 'dryHours'),
  limit(productsWords.product.daysBeforeSeed, 'whole', 'daysBeforeSeeding'),
  limit(productsWords.product.daysAfterSeed, 'whole', 'daysAfterSeeding'),
  {
    kind: 'flag',
    label: productsWords.product.needsAgitation,
    get: (p) => p.label.needsAgitation,
    set: (p, needsAgitation) => ({ ...p, label: { ...p.label, needsAgitation } }),
  },
  {
    kind: 'text',
    label: productsWords.product.registration,
    get: (p) => p.label.registration,
    set: (p, registration) => ({ ...p, label: { ...p.label, registration } }),
  },
  {
    kind: 'text',
    label: productsWords.product.keepOffUntil,
    get: (p) => p.label.reentry ?? '',
    set: (p, text) => ({ ...p, label: withMember(p.label, 'reentry', text === '' ? undefined : text) }),
  },
  yesNoOf<Product>(
    productsWords.product.restrictedUse,
    (p) => p.label.restrictedUse,
    (p, value) => ({ ...p, label: withMember(p.label, 'restrictedUse', value) }),
  ),
  yesNoOf<Product>(
    productsWords.product.isAPesticide,
    (p) => p.pesticide,
    (p, value) => withMember(p, 'pesticide', value),
  ),
  {
    kind: 'text',
    label: productsWords.product.sortRecordsNotices,
    get: (p) => p.type ?? '',
    set: (p, text) => withMember(p, 'type', text === '' ? undefined : text),
  },
  {
    kind: 'text',
    label: productsWords.product.maker,
    get: (p) => p.maker ?? '',
    set: (p, text) => withMember(p, 'maker', text === '' ? undefined : text),
  },
  { kind: 'text', label: productsWords.product.notes, get: (p) => p.note, set: (p, note) => ({ ...p, note }) },
];

const LABEL_CAUTION = productsWords.product.caution;

export const productShelf: ShelfPlan<'products'> = {
  shelf: 'products',
  title: productsWords.product.products,
  one: commonWords.product,
  about: productsWords.product.about,
  caution: LABEL_CAUTION,
  columns,
  parts: [
    part<Product, Active>({
      title: productsWords.product.activeIngredients,
      one: commonWords.activeIngredient,
      rows: (p) => p.actives ?? [],
      replace: (p, actives) => ({ ...p, actives }),
      columns: [
        { kind: 'text', label: productsWords.product.name, get: (a) => a.name, set: (a, name) => ({ ...a, name }) },
        {
          kind: 'figure',
          figure: 'fine-number',
          label: productsWords.product.lbPerUnit,
          positive: true,
          get: (a) => a.lbPerUnit,
          set: (a, lbPerUnit) => ({ ...a, lbPerUnit }),
        },
      ],
      name: (a) => a.name,
      keyOf: (a) => a.name,
      create: (p) => ({ name: productsWords.product.newIngredient((p.actives ?? []).length + 1), lbPerUnit: 1 }),
    }),
  ],
  create: (_book, id) => ({
    id,
    name: productsWords.product.newProduct,
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
  title: productsWords.product.mixes,
  one: commonWords.mix,
  about: productsWords.product.mixesAbout,
  caution: LABEL_CAUTION,
  columns: [
    {
      kind: 'text',
      label: productsWords.product.name,
      inTable: true,
      get: (m) => m.name,
      set: (m, name) => ({ ...m, name }),
    },
    {
      kind: 'figure',
      figure: 'carrier',
      label: productsWords.product.carrier,
      inTable: true,
      positive: true,
      get: (m) => m.carrierGalPer1000SqFt,
      set: (m, carrierGalPer1000SqFt) => ({ ...m, carrierGalPer1000SqFt }),
    },
    {
      kind: 'shown',
      label: productsWords.product.holds,
      inTable: true,
      show: (m, book) =>
        m.parts
          .map((each) => book.products.find((product) => product.id === each.productId)?.name ?? each.productId)
          .join(', '),
    },
    {
      kind: 'flag',
      label: productsWords.product.needsAgitation,
      inTable: true,
      get: (m) => m.needsAgitation,
      set: (m, needsAgitation) => ({ ...m, needsAgitation }),
    },
    {
      kind: 'figure',
      figure: 'minutes',
      label: productsWords.product.toRinse,
      get: (m) => m.rinseMin,
      set: (m, rinseMin) => ({ ...m, rinseMin }),
    },
    {
      kind: 'figure',
      figure: 'volume',
      label: productsWords.product.rinseWater,
      get: (m) => m.rinseGal,
      set: (m, rinseGal) => ({ ...m, rinseGal }),
    },
    {
      kind: 'figure',
      figure: 'volume',
      label: productsWords.product.mostLeftOver,
      get: (m) => m.reserveGal ?? null,
      set: (m, reserveGal) => ({ ...m, reserveGal }),
      unset: ({ reserveGal: _, ...mix }) => mix,
    },
  ],
  parts: [
    part<Mix, MixPart>({
      title: productsWords.product.mixParts,
      one: commonWords.product,
      rows: (m) => m.parts,
      replace: (m, parts) => ({ ...m, parts }),
      columns: [
        {
          kind: 'choice',
          label: commonWords.product,
          options: (book) => book.products.map((product) => ({ value: product.id, words: product.name })),
          get: (p) => p.productId,
          set: (p, productId) => ({ ...p, productId }),
        },
        {
          kind: 'figure',
          figure: 'number',
          label: productsWords.product.amount,
          positive: true,
          get: (p) => p.amountPer1000SqFt,
          set: (p, amountPer1000SqFt) => ({ ...p, amountPer1000SqFt }),
        },
        {
          kind: 'shown',
          label: productsWords.product.unit,
          show: (p, book) =>
            (book.products.find((product) => product.id === p.productId)?.unit ?? '').replace('-', ' '),
        },
      ],
      name: (p, book) => book.products.find((product) => product.id === p.productId)?.name ?? p.productId,
      keyOf: (p) => p.productId,
      create: (m, book) => {
        const free = book.products.find((product) => !m.parts.some((each) => each.productId === product.id));
        return free === undefined ? productsWords.product.allInMix : { productId: free.id, amountPer1000SqFt: 1 };
      },
    }),
  ],
  create: (_book, id) => ({
    id,
    name: productsWords.product.newMix,
    carrierGalPer1000SqFt: 1,
    parts: [],
    needsAgitation: false,
    rinseMin: 0,
    rinseGal: 0,
  }),
};
