import type { Position } from '../book/index.ts';
import type { RoadClass } from './classes.ts';

/**
 * Roads as an extract tells them: junctions, the pieces of road between them, and what is forbidden where. It holds what the
 * tags say and no settings, so that an extract is read once and speeds, truck and avoided areas can change afterwards
 * (`roadNetwork`). Coordinates are whole steps of 1e-7 degrees.
 */
export type RoadMap = {
  readonly junctions: Junctions;
  readonly edges: RoadEdges;
  readonly restrictions: Restrictions;
  readonly about: AboutRoads;
  /** Of everything above; 16 hexadecimal figures. */
  readonly fingerprint: string;
};

export type Junctions = {
  readonly lon: Int32Array;
  readonly lat: Int32Array;
  /** Bits of JUNCTION. */
  readonly flags: Uint8Array;
  /** Clear height of a bar or arch over the junction, cm; 0 for none. */
  readonly heightCm: Uint16Array;
};

/** Pieces of road between two junctions, "forward" in the direction of the way they come from. */
export type RoadEdges = {
  readonly from: Uint32Array;
  readonly to: Uint32Array;
  /** Along the ground, decimetres. */
  readonly lengthDm: Uint32Array;
  /** Place in ROAD_CLASSES. */
  readonly roadClass: Uint8Array;
  /** Bits of EDGE. */
  readonly flags: Uint8Array;
  /** How a car may use it: one of ACCESS, below for cars in general and for heavy goods vehicles. */
  readonly access: Uint8Array;
  readonly heavyAccess: Uint8Array;
  /** Speed limit by tag, km/h; 0 where none is told. */
  readonly maxForwardKmh: Uint8Array;
  readonly maxBackwardKmh: Uint8Array;
  /** Traffic signals between its ends, by direction. */
  readonly signalsForward: Uint8Array;
  readonly signalsBackward: Uint8Array;
  /** Limits; 0 for none: clear height and width in cm, weight in units of 100 kg. */
  readonly heightCm: Uint16Array;
  readonly widthCm: Uint16Array;
  readonly weight100Kg: Uint16Array;
  /** Where the points between the ends begin in `shapeLon`; one more entry than edges. */
  readonly shapeStart: Uint32Array;
  readonly shapeLon: Int32Array;
  readonly shapeLat: Int32Array;
};

/** Turns told apart by tag: from an edge by way of a junction to an edge. */
export type Restrictions = {
  readonly from: Uint32Array;
  readonly via: Uint32Array;
  readonly to: Uint32Array;
  /** Bits of RESTRICTION. */
  readonly flags: Uint8Array;
};

/** `gate`: to be opened by whoever comes; `guarded`: for those who have business behind it. */
export const JUNCTION = { signal: 1, blocked: 2, gate: 4, guarded: 8 } as const;
export const EDGE = { forward: 1, backward: 2, noTrailer: 4, roundabout: 8, unpaved: 16 } as const;
/** `ends`: for those who have business there (destination, customers, delivery); `private`: by leave of the owner. */
export const ACCESS = { open: 0, ends: 1, private: 2, closed: 3 } as const;
/** `only`: this turn and no other from that edge; `heavy`: for heavy goods vehicles alone. */
export const RESTRICTION = { only: 1, heavy: 2 } as const;

/** Where a road map comes from, and how much of it there is. */
export type AboutRoads = {
  /** Who made the data and under which licence, to be shown wherever figures or maps come from it. */
  readonly attribution: string;
  readonly licence: string;
  /** The program that wrote the extract and the moment of its data (ISO 8601), as the file tells them; empty where not told. */
  readonly writtenBy: string;
  readonly dataOf: string;
  /** West, south, east, north of the roads, degrees. */
  readonly bounds: readonly [west: number, south: number, east: number, north: number];
  readonly counts: RoadCounts;
};

/** How many things of each kind an extract held. */
export type RoadCounts = {
  /** In the whole file, roads or not. */
  readonly nodes: number;
  readonly ways: number;
  readonly relations: number;
  /** Ways that a truck might drive on; those of them left out since a node is missing or fewer than two are left. */
  readonly roads: number;
  readonly brokenRoads: number;
  /** Nodes of roads that the extract does not hold. */
  readonly missingNodes: number;
  readonly restrictionsUsed: number;
  /** Turn restrictions by way of another way: counted and not kept. */
  readonly restrictionsViaWay: number;
  /** Those that hold at times only, for others than trucks, or whose members do not meet. */
  readonly restrictionsIgnored: number;
};

/** A place to be joined to the roads. */
export type RoadPlace = { readonly id: string; readonly at: Position };

/** Where a place meets the roads. */
export type Snap = {
  readonly kind: 'snapped';
  readonly id: string;
  readonly edge: number;
  /** Along the edge from its beginning, decimetres. */
  readonly alongDm: number;
  /** Bits of EDGE: the directions in which a truck may stop here. */
  readonly directions: number;
  readonly at: Position;
  /** From the place to the road, straight, metres. */
  readonly awayM: number;
};

/** A place that is not joined to any road, and why. */
export type Unsnapped = {
  readonly kind: 'outside' | 'too-far' | 'island';
  readonly id: string;
  /** To the nearest road of the network, metres; null beyond the distance that is looked through. */
  readonly nearestM: number | null;
};

/** What became of a place that was to be joined to the roads. */
export type Snapping = Snap | Unsnapped;

/** Times and lengths of the quickest ways between places, row-major [from * count + to]; -1 where there is none. */
export type RoadTable = {
  readonly places: readonly Snapping[];
  /** Of the network that it was made with. */
  readonly network: string;
  /** Tenths of a second. */
  readonly durationDs: Int32Array;
  /** Of the quickest way, not the shortest; decimetres. */
  readonly distanceDm: Int32Array;
};

/** The quickest way between two places. */
export type RoadPath = {
  readonly positions: readonly Position[];
  readonly durationSec: number;
  readonly distanceM: number;
  /** Seconds and metres on each class that it uses; turns and signals are not in the seconds. */
  readonly byClass: readonly { readonly roadClass: RoadClass; readonly sec: number; readonly metres: number }[];
  /** Seconds for turns and signals. */
  readonly turnSec: number;
  /** How often it goes on to roads that are for those who have business there. */
  readonly entries: number;
};
