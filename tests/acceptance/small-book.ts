/** Members of one record of a small invented book; the rest is filled in. */
type Members = Readonly<Record<string, unknown>>;

export type SmallBook = {
  /** How many lawns, all alike, a quarter of a mile apart; one unless told. */
  readonly lawns?: number;
  readonly zones?: readonly Members[];
  readonly gates?: readonly Members[];
  readonly machine?: Members;
  readonly handMethods?: readonly Members[];
  readonly rig?: Members;
  readonly products?: readonly Members[];
  readonly mixes?: readonly Members[];
  readonly treatments: readonly Members[];
};

/** The text of a book with one rig and one round. Names, products and rates are invented and not for use. */
export function smallBook(parts: SmallBook): string {
  return JSON.stringify({
    format: 'swardway-book',
    version: 1,
    id: 'small',
    name: 'Small book (invented, not for use)',
    invented: true,
    properties: Array.from({ length: parts.lawns ?? 1 }, (_, number) => ({
      id: number === 0 ? 'lawn' : `lawn-${number + 1}`,
      name: 'Lawn',
      parking: [-89.4 - 0.0047 * number, 40.03],
      gates: parts.gates ?? [],
      zones: parts.zones ?? [{ id: 'turf', name: 'turf', shape: { kind: 'stated', areaSqFt: 43_560 } }],
    })),
    machines: parts.machine === undefined ? [] : [machine(parts.machine)],
    handMethods: parts.handMethods ?? [],
    fillPoints: [{ id: 'shop', name: 'Shop', what: 'shop', at: [-89.41, 40.03], waterGpm: 30 }],
    rigs: [rig(parts)],
    products: parts.products ?? [],
    mixes: parts.mixes ?? [],
    treatments: parts.treatments,
    rounds: [
      {
        id: 'round',
        name: 'Round',
        treatmentIds: parts.treatments.map((each) => each.id),
        dates: ['2027-03-16'],
        rigIds: ['rig'],
      },
    ],
  });
}

function machine(members: Members): Members {
  return {
    id: 'machine',
    name: 'Machine',
    what: 'stand-on',
    transitWidthIn: 36,
    emptyWeightLb: 700,
    maxSlopeDeg: 15,
    ...members,
  };
}

function rig(parts: SmallBook): Members {
  return {
    id: 'rig',
    name: 'Rig',
    homeId: 'shop',
    shiftStartMin: 420,
    shiftMin: 900,
    machines: parts.machine === undefined ? [] : [{ machineId: 'machine', ride: 'rack' }],
    handMethodIds: (parts.handMethods ?? []).map((each) => each.id),
    nurseTankGal: 100,
    bagPlaces: 20,
    payloadLb: 6000,
    ...parts.rig,
  };
}
