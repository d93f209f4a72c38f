import type { Result } from '../../base/index.ts';
import type { RoutingProblem } from '../models/index.ts';
import { readSolomon } from './solomon.ts';
import { readVrplib } from './vrplib.ts';

/** What a file of a routing problem leaves open. */
export type ReadOptions = {
  /** Routes that may be used; absent: as many as there are customers, or what the file says. */
  readonly vehicles?: number;
  /** Lengths are not rounded, whatever the file says; some stored values ask for it. */
  readonly exact?: boolean;
};

/** One kind of file that routing problems come in. */
export type RoutingFormat = {
  readonly id: string;
  readonly title: string;
  /** `where` is the file's name, for messages. Error: 'format-invalid'. */
  readonly read: (text: string, where: string, options: ReadOptions) => Result<RoutingProblem>;
};

/** The formats of public routing instances. */
export const ROUTING_FORMATS: readonly RoutingFormat[] = [
  {
    id: 'vrplib',
    title: 'VRPLIB and TSPLIB text: capacity, route length, one tour, vehicles that differ, reloads',
    read: readVrplib,
  },
  { id: 'solomon', title: 'Solomon text: capacity and time windows, distances cut to one decimal', read: readSolomon },
];
