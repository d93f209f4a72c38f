import type { Exclusion, Property, Zone } from '../../core/book/index.ts';
import { type Box, boxPolygon, type Frame, place, toPosition } from './ground.ts';

/**
 * Three kinds of lot, in metres, in a frame whose x axis runs along the street and whose y axis runs away from it.
 * The figures are round on purpose: the pages beside the books work the areas out by hand from them.
 */
export type LotKind = {
  readonly width: number;
  readonly depth: number;
  /** Fence line between front and back. */
  readonly fence: number;
  readonly house: Box;
  readonly drive: Box;
  readonly walk: Box;
  readonly bed: Box;
  readonly patio: Box;
};

export const LOT_KINDS = {
  narrow: {
    width: 22,
    depth: 36,
    fence: 14,
    house: [5, 9, 18, 20],
    drive: [0.5, 0, 4, 12],
    walk: [10, 0, 11.2, 8],
    bed: [12, 8, 18, 9],
    patio: [7, 20, 13, 24],
  },
  middle: {
    width: 28,
    depth: 42,
    fence: 16,
    house: [7, 10, 22, 22],
    drive: [1, 0, 6, 13],
    walk: [13, 0, 14.2, 9],
    bed: [15, 9, 22, 10],
    patio: [10, 22, 18, 26],
  },
  wide: {
    width: 34,
    depth: 48,
    fence: 19,
    house: [9, 12, 26, 26],
    drive: [2, 0, 8, 16],
    walk: [16, 0, 17.5, 11],
    bed: [18, 11, 26, 12],
    patio: [12, 26, 20, 31],
  },
} as const satisfies Record<string, LotKind>;

export type LotKindName = keyof typeof LOT_KINDS;

/** One lot to be built. What is not given is as on most lots: a 48-in gate, level ground, nothing in the back. */
export type LotPlan = {
  readonly id: string;
  readonly name: string;
  readonly kind: LotKindName;
  readonly frame: Frame;
  /** True where the drive is on the other side. */
  readonly mirrored?: boolean;
  readonly gateIn?: number;
  readonly locked?: boolean;
  readonly backSlopeDeg?: number;
  readonly frontSlopeDeg?: number;
  /** Something in the back yard: play area 4 m by 4 m, pond 5 m by 3 m, or vegetable garden 6 m by 4 m. */
  readonly inBack?: 'play' | 'water' | 'garden';
  /** Feet kept away from it. */
  readonly keepAwayFt?: number;
  readonly noTrailer?: boolean;
  readonly wetBack?: boolean;
  readonly hours?: Property['hours'];
  readonly cautions?: Property['cautions'];
  readonly note?: string;
};

const BACK_FEATURES = { play: [3, 4, 4], water: [3, 5, 3], garden: [3, 6, 4] } as const;
const PARKED_BEFORE_LOT_M = 3;

export function buildLot(lot: LotPlan): Property {
  const kind: LotKind = LOT_KINDS[lot.kind];
  const flip = (box: Box): Box =>
    lot.mirrored === true ? [kind.width - box[2], box[1], kind.width - box[0], box[3]] : box;
  const area = (box: Box) => boxPolygon(lot.frame, flip(box));
  const gateX = lot.mirrored === true ? 2 : kind.width - 2;
  return {
    id: lot.id,
    name: lot.name,
    address: `${lot.name}, Bramley Fold (invented)`,
    parking: toPosition(place(lot.frame, [kind.width / 2, -PARKED_BEFORE_LOT_M])),
    noTrailer: lot.noTrailer ?? false,
    gates: [
      {
        id: 'side',
        name: 'side gate',
        clearWidthIn: lot.gateIn ?? 48,
        at: toPosition(place(lot.frame, [gateX, kind.fence])),
        locked: lot.locked ?? false,
      },
    ],
    zones: [
      zone('front', {
        shape: { kind: 'drawn', geometry: area([0, 0, kind.width, kind.fence]) },
        slopeDeg: lot.frontSlopeDeg ?? 0,
      }),
      zone('back', {
        shape: { kind: 'drawn', geometry: area([0, kind.fence, kind.width, kind.depth]) },
        slopeDeg: lot.backSlopeDeg ?? 0,
        gateIds: ['side'],
        ...(lot.wetBack === true ? { wetLimitLb: 700 } : {}),
      }),
    ],
    exclusions: exclusionsOf(lot, kind, area),
    ...(lot.hours === undefined ? {} : { hours: lot.hours }),
    cautions: [...(lot.cautions ?? []), ...(lot.locked === true ? (['locked'] as const) : [])],
    note: lot.note ?? '',
  };
}

function zone(name: string, rest: Pick<Zone, 'shape' | 'slopeDeg'> & Partial<Zone>): Zone {
  return { id: name, name, gateIds: [], ...rest };
}

function exclusionsOf(lot: LotPlan, kind: LotKind, area: (box: Box) => Exclusion['geometry']): readonly Exclusion[] {
  const item = (id: string, what: Exclusion['what'], box: Box, keepAwayFt = 0): Exclusion => ({
    id,
    name: id,
    what,
    geometry: area(box),
    keepAwayFt,
  });
  const fixed = [
    item('house', 'building', kind.house),
    item('drive', 'paving', kind.drive),
    item('walk', 'paving', kind.walk),
    item('front bed', 'bed', kind.bed),
    item('patio', 'paving', kind.patio),
  ];
  if (lot.inBack === undefined) return fixed;
  const [x, width, height] = BACK_FEATURES[lot.inBack];
  const top = kind.depth - 2;
  return [...fixed, item(lot.inBack, lot.inBack, [x, top - height, x + width, top], lot.keepAwayFt ?? 0)];
}

/** A street with lots on both sides. */
export type Street = {
  readonly name: string;
  readonly from: readonly [number, number];
  readonly headingDeg: number;
  /** Kinds of the lots on the right-hand side and on the left-hand side, in the direction of the street. */
  readonly right: readonly LotKindName[];
  readonly left: readonly LotKindName[];
};

const STREET_HALF_WIDTH_M = 8;
const GAP_BETWEEN_LOTS_M = 1.5;

/** The lots of a street: even numbers on the right, odd ones on the left. `extra` adds what is special about a lot. */
export function streetLots(
  street: Street,
  extra: Readonly<Record<string, Partial<LotPlan>>> = {},
): readonly Property[] {
  const slug = street.name.toLowerCase().replaceAll(' ', '-');
  return (['right', 'left'] as const).flatMap((side) => {
    let along = 0;
    return street[side].map((kind, index) => {
      const width = LOT_KINDS[kind].width;
      const number = 2 * (index + 1) - (side === 'left' ? 1 : 0);
      const frame = lotFrame(street, side, along, width);
      along += width + GAP_BETWEEN_LOTS_M;
      const name = `${number} ${street.name}`;
      return buildLot({ id: `${slug}-${number}`, name, kind, frame, mirrored: index % 2 === 1, ...extra[name] });
    });
  });
}

function lotFrame(street: Street, side: 'right' | 'left', along: number, width: number): Frame {
  const road: Frame = { at: street.from, headingDeg: street.headingDeg };
  if (side === 'left') return { at: place(road, [along, STREET_HALF_WIDTH_M]), headingDeg: street.headingDeg };
  return { at: place(road, [along + width, -STREET_HALF_WIDTH_M]), headingDeg: street.headingDeg + 180 };
}
