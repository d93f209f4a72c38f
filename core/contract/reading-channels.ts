import * as v from 'valibot';
import type { GroundSource } from '../formats/index.ts';
import { channel } from './channel.ts';
import type { Elevation } from './reading-types.ts';
import type { Done } from './types.ts';

const handle = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,80}$/));
const longitude = v.pipe(v.number(), v.minValue(-180), v.maxValue(180));
const latitude = v.pipe(v.number(), v.minValue(-90), v.maxValue(90));
/** A grid of 100 by 100 over a zone. */
const MOST_POSITIONS = 10_000;

/** Files of ground, read by the host in a thread of its own. */
export const readingChannels = {
  /**
   * Everything a picked file holds, in any format; 'ground.progress' events while it is read. Chosen with the purpose 'ground'.
   * A file that the page sent is gone afterwards, so it can be read once.
   */
  'ground.read': channel<GroundSource>()(v.strictObject({ token: handle })),
  /** Ends a reading soon; it fails with 'cancelled'. */
  'ground.cancel': channel<Done>()(v.strictObject({ token: handle })),
  /** Heights at positions out of a picked GeoTIFF, chosen with the purpose 'heights'. */
  'ground.elevation': channel<Elevation>()(
    v.strictObject({
      token: handle,
      positions: v.pipe(v.array(v.tuple([longitude, latitude])), v.minLength(1), v.maxLength(MOST_POSITIONS)),
    }),
  ),
};
