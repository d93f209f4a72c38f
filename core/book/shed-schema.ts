import * as v from 'valibot';
import {
  dateSchema,
  hoursSchema,
  idSchema,
  minuteOfDay,
  nameSchema,
  notNegative,
  positionSchema,
  positive,
  share,
  textSchema,
  wholeNumber,
} from './schema-parts.ts';

/** A calibration as it was made. Kept as it is; a later one is added beside it. */
export const calibrationSchema = v.object({
  id: idSchema,
  on: dateSchema,
  by: v.optional(textSchema, ''),
  /** Which calculation of the bench it was. */
  what: nameSchema,
  /** What was filled in, as it was typed, by the names of the blanks. */
  given: v.array(v.object({ name: nameSchema, text: textSchema })),
  found: v.array(v.object({ name: nameSchema, value: v.pipe(v.number(), v.finite()), unit: v.string() })),
  source: v.optional(textSchema, ''),
  /** Pressure, tip, gate or gear that the figures hold for, in the words of who made it. */
  setting: v.optional(textSchema, ''),
});

/** What heads and hand methods keep of their calibrations. */
const calibrationMembers = {
  calibrations: v.optional(v.array(calibrationSchema)),
  /** A new calibration is due after so many days of use; absent: never asked for. */
  dueAfterUses: v.optional(v.pipe(wholeNumber, v.minValue(1))),
  /** Days of use since the last calibration; absent: none counted. */
  usesSince: v.optional(wholeNumber),
} as const;

/** A tank, hopper or seed box. */
export const compartmentSchema = v.variant('kind', [
  v.object({
    kind: v.literal('tank'),
    id: idSchema,
    name: nameSchema,
    capacityGal: positive,
    /** What the pump cannot draw, gal. */
    sumpGal: v.optional(notNegative, 0),
    agitated: v.optional(v.boolean(), true),
  }),
  v.object({ kind: v.literal('hopper'), id: idSchema, name: nameSchema, capacityLb: positive }),
  v.object({ kind: v.literal('seed-box'), id: idSchema, name: nameSchema, capacityLb: positive }),
]);

/** What a head is for. */
export const HEAD_PURPOSES = ['spray', 'spread', 'aerate', 'seed'] as const;

/** What a head can show its last swath with. */
export const MARKS = ['foam', 'dye'] as const;
/** Sides of a machine, for whoever drives it. */
export const SIDES = ['left', 'right'] as const;

/** How a head is driven over a lawn. Where it is given, work on drawn ground is reckoned from the passes over it. */
export const headPassesSchema = v.object({
  /** How much neighbouring swaths share at least, ft. */
  overlapFt: notNegative,
  /** Passes along the edge and round every obstacle before the parallel swaths. */
  trimPasses: v.pipe(wholeNumber, v.maxValue(10)),
  /** Seconds for changing from one swath to the next, besides the way itself. */
  turnSec: notNegative,
  /** Width of a trim pass, ft: a boom folded in, or a trim nozzle; absent: the swath. */
  trimSwathFt: v.optional(positive),
  /** Widths of boom sections that are shut one by one over treated ground, left to right, ft; absent: the swath is one. */
  sectionsFt: v.optional(v.array(positive)),
  /** Side on which the spray is shielded: it faces the edge in trim passes. */
  shieldedSide: v.optional(v.picklist(SIDES)),
  /** Drives out the corners of trim passes, straight on to the edge and back; absent: turns on the spot there. */
  squareCorners: v.optional(v.boolean()),
  /** Speed with nothing coming out, mph; absent: the working speed. */
  transitMph: v.optional(positive),
  /** On ground at least this steep swaths run up and down the slope, degrees; absent: slope makes no difference. */
  upAndDownFromDeg: v.optional(v.pipe(notNegative, v.maxValue(60))),
  /** What shows where the last swath was; absent: nothing, as where wheel tracks show. */
  mark: v.optional(
    v.object({
      what: v.picklist(MARKS),
      /** Fluid ounces for 1,000 ft that are marked: by foam the straight swaths, by dye all that is sprayed. */
      flOzPer1000Ft: positive,
    }),
  ),
  /** Hand trim of less ground than this on one zone is stated and not planned, ft2; absent: all of it is planned. */
  handTrimFromSqFt: v.optional(notNegative),
});

/** What a machine works with; several can be swapped on one machine. */
export const headSchema = v.object({
  id: idSchema,
  name: nameSchema,
  purpose: v.picklist(HEAD_PURPOSES),
  /** Working width of one pass, ft. */
  swathFt: positive,
  /** Working speed, mph. */
  speedMph: positive,
  /** Field efficiency, 0 to 1: the share of the theoretical rate that is left after turning, overlap and minor stops. */
  fieldEfficiency: v.optional(v.pipe(share, v.gtValue(0)), 0.65),
  /** Absent: work with it is reckoned from the field efficiency everywhere. */
  passes: v.optional(headPassesSchema),
  /** Minutes to fit this head in place of another one of the same machine. */
  swapMin: v.optional(notNegative, 0),
  /** Compartments it draws from; several tanks listed here run together. Empty for aerating. */
  compartmentIds: v.optional(v.array(idSchema), []),
  /** Delivered carrier, gal per 1,000 ft2, from the last calibration; absent: not calibrated. */
  deliveredGalPer1000SqFt: v.optional(positive),
  ...calibrationMembers,
});

/** Ways of treating on foot. */
export const HAND_METHOD_KINDS = ['hose', 'backpack', 'hand-spreader'] as const;

/** Treating on foot: hose and gun, backpack sprayer, hand spreader. */
export const handMethodSchema = v.object({
  id: idSchema,
  name: nameSchema,
  what: v.picklist(HAND_METHOD_KINDS),
  /** Where its material comes from: a machine's compartment, a tank fixed on the rig, or its own vessel. */
  drawsFrom: v.variant('kind', [
    v.object({ kind: v.literal('machine'), machineId: idSchema, compartmentId: idSchema }),
    v.object({
      kind: v.literal('rig'),
      capacityGal: positive,
      sumpGal: v.optional(notNegative, 0),
      agitated: v.optional(v.boolean(), true),
    }),
    v.object({
      kind: v.literal('own-tank'),
      capacityGal: positive,
      sumpGal: v.optional(notNegative, 0),
      agitated: v.optional(v.boolean(), false),
    }),
    v.object({ kind: v.literal('own-hopper'), capacityLb: positive }),
  ]),
  /** Longest way from the stand to the farthest corner, ft; absent where nothing ties the worker to the rig. */
  reachFt: v.optional(positive),
  minutesPer1000SqFt: positive,
  /** Seconds on each zone besides, to bring the tool or hose there; absent: none. */
  standSec: v.optional(notNegative),
  /** Seconds for each 50 ft of the way from the stand to the farthest point of a zone, to pull the hose on and back; absent: none. */
  moveSec: v.optional(notNegative),
  /** Minutes at each stop to get ready and to put away (hose out and in). */
  setUpMin: v.optional(notNegative, 0),
  /** Smallest volume with which the pump or gun still works evenly, gal. */
  leastVolumeGal: v.optional(notNegative, 0),
  /** Delivered carrier, gal per 1,000 ft2, from the last timed catch; absent: not calibrated. */
  deliveredGalPer1000SqFt: v.optional(positive),
  /** Whether a second person may work with it while the first one rides; counts where the rig's crew is two or more. */
  besideMachine: v.optional(v.boolean(), true),
  ...calibrationMembers,
});

/** How a machine is driven. */
export const MACHINE_KINDS = ['ride-on', 'stand-on', 'walk-behind'] as const;

/** A unit that sprays, spreads, aerates or seeds. */
export const machineSchema = v.object({
  id: idSchema,
  name: nameSchema,
  what: v.picklist(MACHINE_KINDS),
  /** Width on the move with booms folded, inches. */
  transitWidthIn: positive,
  /** Weight without material, lb. */
  emptyWeightLb: notNegative,
  /** Steepest ground it may work on, degrees: the maker's figure. */
  maxSlopeDeg: v.pipe(notNegative, v.maxValue(60)),
  compartments: v.optional(v.array(compartmentSchema), []),
  heads: v.array(headSchema),
  /** Bags that ride on the machine beside the hopper, and go into it where the machine stands. */
  bagPlaces: v.optional(wholeNumber, 0),
  /** Minutes to take one of them off, open and pour it; absent: as long as a bag at its rig. */
  minutesPerBag: v.optional(notNegative),
});

/** How a machine rides on a rig. */
export const RIDES = ['rack', 'trailer', 'ramp'] as const;

/** A machine on a rig, and how it rides. */
export const carriedMachineSchema = v.object({
  machineId: idSchema,
  ride: v.picklist(RIDES),
  unloadMin: v.optional(notNegative, 0),
  loadMin: v.optional(notNegative, 0),
});

/** A truck with its crew, nurse tank, bag stock and the machines it carries. */
export const rigSchema = v.object({
  id: idSchema,
  name: nameSchema,
  crew: v.optional(v.pipe(wholeNumber, v.minValue(1)), 1),
  /** Pay per hour and person on this rig, dollars; absent: the wage of the book's prices. */
  wagePerHour: v.optional(notNegative),
  /** The fill point where its day starts. */
  homeId: idSchema,
  /** The fill point where its day ends; absent: where it starts. */
  endId: v.optional(idSchema),
  shiftStartMin: minuteOfDay,
  shiftMin: positive,
  overtimeMin: v.optional(notNegative, 0),
  breakAfterMin: v.optional(notNegative),
  breakMin: v.optional(notNegative, 0),
  /** Minutes between the start of the shift and driving off: checks, loading, mixing. */
  morningMin: v.optional(notNegative, 0),
  /** Minutes at the shop after coming back: rinse, records. */
  eveningMin: v.optional(notNegative, 0),
  machines: v.array(carriedMachineSchema),
  handMethodIds: v.optional(v.array(idSchema), []),
  nurseTankGal: v.optional(notNegative, 0),
  /** Flow from the nurse tank into a machine, gal per minute. */
  nurseFlowGpm: v.optional(positive, 20),
  bagPlaces: v.optional(wholeNumber, 0),
  /** Minutes to open and pour one bag. */
  minutesPerBag: v.optional(notNegative, 1),
  /** Minutes for one refill from the rig whatever the amount: drive or walk to the rig, connect, measure product. */
  refillMin: v.optional(notNegative, 4),
  /** More minutes where the refill falls in the middle of a zone: to the rig and back again. */
  midZoneMin: v.optional(notNegative, 2),
  /** Minutes at every stop: park, walk the hazards, flag, leave the notice. */
  stopMin: v.optional(notNegative, 3),
  /** What may be loaded beside the empty truck, lb: machines, water, bags. */
  payloadLb: positive,
});

/** Where water and product can be had. */
export const fillPointSchema = v.object({
  id: idSchema,
  name: nameSchema,
  what: v.picklist(['shop', 'hydrant', 'supplier']),
  at: positionSchema,
  hours: v.optional(hoursSchema),
  /** Water flow, gal per minute; 0 where there is no water. */
  waterGpm: v.optional(notNegative, 0),
  /** Minutes for one visit whatever the amount. */
  visitMin: v.optional(notNegative, 5),
  /** Minutes to put one bag on the rig. */
  minutesPerBag: v.optional(notNegative, 0.5),
  /** Products held; 'all' where everything is in stock. */
  products: v.optional(v.union([v.literal('all'), v.array(idSchema)]), 'all'),
});

/** What money and distance cost, in dollars. */
export const pricesSchema = v.object({
  wagePerHour: v.optional(notNegative, 0),
  /** Pay per overtime hour as a multiple of the wage. */
  overtimeFactor: v.optional(notNegative, 1.5),
  perMile: v.optional(notNegative, 0),
  /** Per property and day after the due date. */
  perDayLate: v.optional(notNegative, 0),
  /** For sending a rig out at all. */
  perRigDay: v.optional(notNegative, 0),
});

export const travelSettingsSchema = v.object({
  /** Road distance over straight line. */
  circuity: v.optional(v.pipe(positive, v.minValue(1)), 1.4),
  /** Driving speed by straight-line distance; the last one has no upper end. */
  speeds: v.optional(v.array(v.object({ upToMiles: v.nullable(positive), mph: positive })), [
    { upToMiles: 2, mph: 22 },
    { upToMiles: 5, mph: 28 },
    { upToMiles: null, mph: 34 },
  ]),
});

/** Times and distances between named places, imported; used where both ends are found. */
export const matrixSchema = v.object({
  source: textSchema,
  placeIds: v.array(idSchema),
  /** [from][to], null where unknown. */
  durationSec: v.array(v.array(v.nullable(notNegative))),
  distanceM: v.array(v.array(v.nullable(notNegative))),
});
