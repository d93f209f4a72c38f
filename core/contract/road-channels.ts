import * as v from 'valibot';
import type { Learnt } from '../travel/by-road/index.ts';
import { channel } from './channel.ts';
import type { RoadsFile, RoadsStatus, RoadWays } from './road-types.ts';
import type { Done } from './types.ts';

const handle = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,80}$/));
const ofSession = v.strictObject({ session: handle });
const longitude = v.pipe(v.number(), v.minValue(-180), v.maxValue(180));
const latitude = v.pipe(v.number(), v.minValue(-90), v.maxValue(90));
/** Stops of a day, with fill points between them. */
const MOST_STOPS = 1000;

/** Real roads beside a book. */
export const roadChannels = {
  /** What roads there are, and how many pairs of the book's places they join: reckons what is not known yet. */
  'roads.status': channel<RoadsStatus>()(ofSession),
  /**
   * Makes the road file of a book from a picked extract (purpose 'roads'), whole or not at all; 'roads.progress' events meanwhile. A
   * file that the page sent is gone afterwards.
   */
  'roads.import': channel<RoadsFile>()(v.strictObject({ session: handle, token: handle })),
  /** Ends an import soon; it fails with 'cancelled'. */
  'roads.cancel': channel<Done>()(ofSession),
  /** Removes the road file and what was reckoned from it. */
  'roads.forget': channel<Done>()(ofSession),
  /** Ways along the roads from each position to the next. */
  'roads.ways': channel<RoadWays>()(
    v.strictObject({
      session: handle,
      stops: v.pipe(v.array(v.tuple([longitude, latitude])), v.maxLength(MOST_STOPS)),
    }),
  ),
  /** What the drives that were written down teach about speeds. */
  'roads.learn': channel<Learnt>()(ofSession),
};
