import * as v from 'valibot';

export const PLAN_FORMAT = 'swardway-plan';
export const PLAN_VERSION = 1;

const figure = v.pipe(v.number(), v.finite());
const text = v.string();

/** One product in the unit it is measured in. */
export const productAmountSchema = v.object({
  productId: text,
  amount: figure,
  unit: v.picklist(['fl-oz', 'oz', 'lb']),
});

/** What went into a compartment. `volumeGal` for tanks, `weightLb` for hoppers; the other one is 0. */
export const fillSchema = v.object({
  compartmentId: text,
  materialId: text,
  volumeGal: figure,
  weightLb: figure,
  products: v.array(productAmountSchema),
});
/** What was taken into the rig's own stock: water (gal) or a dry product (lb, with the bags that it opens). */
export const stockFillSchema = v.object({
  stock: v.picklist(['water', 'dry']),
  productId: text,
  volumeGal: figure,
  weightLb: figure,
  bags: figure,
});

const span = { startSec: figure, endSec: figure };
const atOp = { propertyId: text, zoneId: text, treatmentId: text, step: figure };

export const methodSchema = v.variant('kind', [
  v.object({ kind: v.literal('machine'), machineId: text, headId: text }),
  v.object({ kind: v.literal('hand'), handMethodId: text }),
]);

/** True for what is trimmed by hand after a machine: its ground comes after the machine's in the ground of the task. */
const handTrim = v.optional(v.boolean());

/**
 * What a rig does, one thing after the other without gaps; where two persons work at a stop, what the second one does overlaps with
 * what the first one does. Times are seconds after local midnight.
 */
export const activitySchema = v.variant('kind', [
  v.object({ ...span, kind: v.literal('morning'), fills: v.array(fillSchema), stock: v.array(stockFillSchema) }),
  v.object({ ...span, kind: v.literal('drive'), fromPlaceId: text, toPlaceId: text, distanceM: figure }),
  v.object({ ...span, kind: v.literal('wait') }),
  v.object({ ...span, kind: v.literal('break') }),
  v.object({ ...span, kind: v.literal('set-up'), propertyId: text }),
  v.object({ ...span, ...atOp, kind: v.literal('swap-head'), machineId: text, headId: text }),
  v.object({
    ...span,
    ...atOp,
    kind: v.literal('treat'),
    method: methodSchema,
    /** 2: done by the second person while the first one works. */
    person: v.optional(v.picklist([1, 2]), 1),
    handTrim,
    /** Ground of this work that was done before, and that is done now. ft2 */
    doneSqFt: figure,
    areaSqFt: figure,
    draws: v.array(v.object({ compartmentId: text, materialId: text, volumeGal: figure, weightLb: figure })),
  }),
  v.object({
    ...span,
    ...atOp,
    kind: v.literal('refill'),
    /** '' for a refill from the rig. */
    fillPointId: text,
    /** Ground of the zone done before the refill; 0 before its beginning. ft2 */
    afterSqFt: figure,
    rinsedCompartmentIds: v.array(text),
    /** Water for rinsing: from the nurse tank in a refill from the rig, else from the fill point. */
    rinseGal: figure,
    fills: v.array(fillSchema),
    stock: v.array(stockFillSchema),
    reasonCode: v.picklist(['runs-dry', 'stock-runs-out', 'payload', 'change-of-material', 'cheaper-here-than-later']),
    /** The reason in words with its figures. */
    reason: text,
  }),
  v.object({
    ...span,
    ...atOp,
    /** Bags that ride on a machine go into its hopper where it works. */
    kind: v.literal('pour'),
    /** Ground of the zone done before; 0 before its beginning. ft2 */
    afterSqFt: figure,
    /** The bags: a compartment of its own. */
    fromCompartmentId: text,
    /** What goes into the hopper. */
    fills: v.array(fillSchema),
  }),
  v.object({ ...span, kind: v.literal('pack-up'), propertyId: text }),
  v.object({ ...span, kind: v.literal('evening') }),
]);

/** From the passes over the lawn's own shape, or from the field capacity of the machine. */
export const reckonedSchema = v.variant('from', [
  v.object({
    from: v.literal('passes'),
    /** Ground that the material goes over, overlap included: what empties the tank. ft2 */
    coveredSqFt: figure,
    /** What is covered beyond the ground that the machine treats, as a share of that. */
    overlapShare: figure,
    /** Rate on the ground that the machine treats, as a multiple of one pass: on average, and at the worst place. */
    averageRate: figure,
    worstRate: figure,
    swaths: figure,
    trimPasses: figure,
    /** Ground that the machine does not reach and nobody trims by hand: it stays untreated. ft2 */
    notReachedSqFt: figure,
  }),
  v.object({ from: v.literal('field-capacity'), fieldEfficiency: figure }),
]);

export const planTaskSchema = v.object({
  ...atOp,
  method: methodSchema,
  /** 2: done by the second person while the first one works. */
  person: v.optional(v.picklist([1, 2]), 1),
  handTrim,
  startSec: figure,
  endSec: figure,
  areaSqFt: figure,
  /** What a machine's minutes and material come from. */
  reckoned: v.optional(reckonedSchema),
  volumeGal: figure,
  weightLb: figure,
  /** Numbers of the loads that covered it. */
  loadNumbers: v.array(figure),
  /** Why this method: the figures of the alternatives. */
  why: text,
});

/** What the plan would take if a stop were done another way: by other machines or hand methods, or by another rig on that day. */
export const otherWaySchema = v.object({
  rigId: text,
  methods: v.array(methodSchema),
  /** More paid time and cost over all rigs; negative where the plan would be better so. */
  addedSec: figure,
  addedUsd: figure,
  words: text,
});

export const planStopSchema = v.object({
  number: figure,
  propertyId: text,
  name: text,
  arriveSec: figure,
  leaveSec: figure,
  driveSec: figure,
  distanceM: figure,
  tasks: v.array(planTaskSchema),
  /** The likeliest ones; none in plans of more than twelve days. */
  otherWays: v.optional(v.array(otherWaySchema), []),
});

/** One fill of a compartment: what goes in and which ground it covers. Numbered through the day. */
export const planLoadSchema = v.object({
  number: figure,
  compartmentId: text,
  materialId: text,
  kind: v.picklist(['tank', 'dry']),
  /** Where it is filled: '' from the rig or from bags on the machine, else the fill point. */
  fillPointId: text,
  /** True where bags that ride on the machine are poured in. */
  fromBags: v.optional(v.boolean(), false),
  atPropertyId: text,
  startSec: figure,
  /** What was still in the compartment, and what goes in. */
  beforeGal: figure,
  beforeLb: figure,
  volumeGal: figure,
  weightLb: figure,
  /** Mix that goes in besides and stays below the reach of the pump: with the first load of a mix and after a rinse. Not in `products`. */
  sumpGal: v.optional(figure, 0),
  products: v.array(productAmountSchema),
  covers: v.array(v.object({ propertyId: text, zoneId: text, treatmentId: text, fromSqFt: figure, areaSqFt: figure })),
  coversSqFt: figure,
  leftGal: figure,
  leftLb: figure,
  /** Why it is as large as it is. */
  why: v.optional(text, ''),
});

/** Level of one tank, hopper or stock over the day: a broken line through these points. */
export const levelLineSchema = v.object({
  id: text,
  label: text,
  kind: v.picklist(['tank', 'dry', 'nurse', 'bags']),
  unit: v.picklist(['gal', 'lb']),
  capacity: figure,
  points: v.array(v.tuple([figure, figure])),
});

/** What a day would be with a little more of something, its order of stops unchanged. */
export const whatIfSchema = v.object({
  what: v.picklist(['shift', 'nurse-tank', 'compartment']),
  compartmentId: text,
  amount: figure,
  unit: v.picklist(['h', 'gal']),
  savedSec: figure,
  savedUsd: figure,
  /** Properties without a place of which any one would then fit into the day. */
  propertyIds: v.array(text),
  words: text,
});

/** Ground of the work, a zone once for each time that it is gone over. ft2 */
const groundSums = {
  /** Without what a machine does not reach and nobody trims. */
  treatedSqFt: figure,
  /** What machines go over, overlap included where it is reckoned from passes, and what is treated by hand. */
  coveredSqFt: v.optional(figure, 0),
  /** Of what is treated: by hand, after a machine. */
  handTrimSqFt: v.optional(figure, 0),
  /** What a machine does not reach and nobody trims: it stays untreated. */
  notReachedSqFt: v.optional(figure, 0),
};

export const planDaySchema = v.object({
  date: text,
  rigId: text,
  rigName: text,
  startSec: figure,
  endSec: figure,
  paidSec: figure,
  overtimeSec: figure,
  driveSec: figure,
  treatSec: figure,
  refillSec: figure,
  distanceM: figure,
  ...groundSums,
  costUsd: figure,
  stops: v.array(planStopSchema),
  loads: v.array(planLoadSchema),
  levels: v.array(levelLineSchema),
  activities: v.array(activitySchema),
  /** What the truck carries when it leaves: water, bags, products, machines, with weights. */
  carry: v.array(
    v.object({
      what: v.picklist(['water', 'bags', 'product', 'machine', 'mix']),
      id: text,
      label: text,
      amount: figure,
      unit: text,
      weightLb: figure,
    }),
  ),
  carryWeightLb: figure,
  payloadLb: figure,
  /** What is left in each compartment at the end, and what to do with it. */
  leftOver: v.array(
    v.object({ compartmentId: text, materialId: text, volumeGal: figure, weightLb: figure, advice: text }),
  ),
  /** Only what makes a difference; none in plans of more than twelve days. */
  whatIf: v.optional(v.array(whatIfSchema), []),
});

/** A limit that alone keeps work out of a rig's days: moved so far, the work fits on the date, after the stop that is named. */
export const waySchema = v.object({
  limit: v.picklist([
    'time',
    'day',
    'customer-hours',
    'station-hours',
    'payload',
    'bag-places',
    'nurse-tank',
    'compartment',
    'supply',
  ]),
  /** The property, fill point, compartment or product that the limit belongs to; '' for those of the rig itself. */
  subjectId: text,
  /** How much more is needed. */
  amount: figure,
  unit: v.picklist(['min', 'lb', 'bags', 'gal', '']),
  /** Hours that would do, for the limits that are hours; else 0. */
  fromSec: figure,
  toSec: figure,
  date: text,
  /** '' where the work would come first. */
  afterPropertyId: text,
  words: text,
});

export const unplacedSchema = v.object({
  ...atOp,
  propertyName: text,
  zoneName: text,
  /** One for each rig; `ways` are the limits each of which alone keeps the work out. */
  reasons: v.array(v.object({ rigId: text, code: text, words: text, ways: v.optional(v.array(waySchema), []) })),
});

export const totalsSchema = v.object({
  days: figure,
  stops: figure,
  ...groundSums,
  paidSec: figure,
  overtimeSec: figure,
  driveSec: figure,
  distanceM: figure,
  refills: figure,
  fillPointVisits: figure,
  loads: figure,
  costUsd: figure,
  unplaced: figure,
  waterGal: figure,
  products: v.array(productAmountSchema),
});

/** What days of unlike length cost, where a price on them was asked for: part of the plan's cost and of no day's. */
export const evenDaysSchema = v.object({
  /** For each hour by which a rig's day is longer than the mean of all days of the plan. */
  usdPerHour: figure,
  meanSec: figure,
  shortestSec: figure,
  longestSec: figure,
  /** By how much days are longer than the mean, summed over them. */
  aboveSec: figure,
  costUsd: figure,
  words: text,
});

/** See `UnderWay`. */
const underWaySchema = v.object({
  rigId: text,
  nowMin: figure,
  at: v.object({ id: text, at: v.tuple([figure, figure]) }),
  hadBreak: v.boolean(),
  compartments: v.array(v.object({ compartmentId: text, materialId: text, volumeGal: figure, weightLb: figure })),
  waterGal: figure,
  bags: v.array(v.object({ productId: text, weightLb: figure })),
});
const restSchema = v.object({ date: text, propertyIds: v.array(text), rigs: v.array(underWaySchema) });

/** The JSON form of a plan. Every quantity carries its unit in its name. */
export const planSchema = v.object({
  format: v.literal(PLAN_FORMAT),
  version: v.literal(PLAN_VERSION),
  bookId: text,
  bookName: text,
  roundId: text,
  roundName: text,
  invented: v.boolean(),
  problemHash: text,
  seed: figure,
  iterations: figure,
  /** Whether drive times are an estimate, or come from an imported matrix or from roads. */
  travel: v.picklist(['estimate', 'matrix', 'roads', 'mixed']),
  /** Whose roads they come from, to be shown with them. */
  travelCredit: v.optional(text),
  days: v.array(planDaySchema),
  unplaced: v.array(unplacedSchema),
  totals: totalsSchema,
  evenDays: v.optional(evenDaysSchema),
  /** Rigs, or machines of rigs, that were out on single dates when it was planned. */
  outages: v.optional(v.array(v.object({ date: text, rigId: text, machineId: v.exactOptional(text) }))),
  /** What was done before, and is no work of the plan: without a zone the whole property. */
  done: v.optional(
    v.array(
      v.object({
        propertyId: text,
        zoneId: v.exactOptional(text),
        treatmentId: v.exactOptional(text),
        step: v.exactOptional(figure),
      }),
    ),
  ),
  /** Given in a plan of the rest of a day under way: the properties that were left, and where and with what each rig stood when. */
  rest: v.exactOptional(restSchema),
  issues: v.array(
    v.object({ code: text, severity: v.picklist(['error', 'warning', 'note']), where: text, message: text }),
  ),
});
