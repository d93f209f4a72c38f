import * as v from 'valibot';
import type { AddressAnswer } from '../places/index.ts';
import { channel } from './channel.ts';
import type {
  Background,
  BackgroundList,
  BackgroundTrouble,
  KeptPicture,
  StreetsInfo,
  StreetsLoaded,
} from './ground-types.ts';
import type { Done } from './types.ts';

const nothing = v.strictObject({});
const handle = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,80}$/));
const MOST_ADDRESSES = 20_000;

/** What lies behind the lawns, and where addresses are. */
export const groundChannels = {
  'background.list': channel<BackgroundList>()(nothing),
  /** Takes up a picked file of tiles or a GeoTIFF. The file stays where it is. */
  'background.open': channel<Background>()(v.strictObject({ token: handle })),
  /** Takes a file off the list; the file stays. */
  'background.forget': channel<Done>()(v.strictObject({ backgroundId: handle })),
  /** Why the newest tile of a background did not come. */
  'background.trouble': channel<BackgroundTrouble>()(v.strictObject({ backgroundId: handle })),

  /** Puts a picked PNG or JPEG of at most 20 MB into the book file. */
  'picture.add': channel<KeptPicture>()(v.strictObject({ session: handle, token: handle })),
  /** Where the pictures of a book are served; the picture's name goes behind it. */
  'picture.address': channel<{ readonly address: string }>()(v.strictObject({ session: handle })),

  /** Takes in a picked street file with address ranges. */
  'places.load': channel<StreetsLoaded>()(v.strictObject({ token: handle })),
  'places.list': channel<readonly StreetsInfo[]>()(nothing),
  'places.forget': channel<Done>()(v.strictObject({ streetsId: handle })),
  /** Looks addresses up in every street file; the answers come in the order of the addresses. */
  'places.find': channel<readonly AddressAnswer[]>()(
    v.strictObject({
      addresses: v.pipe(v.array(v.pipe(v.string(), v.maxLength(4000))), v.maxLength(MOST_ADDRESSES)),
    }),
  ),
};
