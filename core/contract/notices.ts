import * as v from 'valibot';

/** A package that comes with the program. */
const packageSchema = v.strictObject({
  name: v.string(),
  version: v.string(),
  /** By the names of the SPDX licence list. */
  licence: v.string(),
  /** Its words: a place in `texts`. */
  text: v.pipe(v.number(), v.integer(), v.minValue(0)),
  /** Where a package has no licence file of its own: the package whose file with the same words stands for it; else null. */
  wordsOf: v.nullable(v.string()),
});

/** The file licences.json of the built screens: under which licences the program and what comes with it are passed on. */
export const noticesSchema = v.strictObject({
  /** The words of the program's own licence. */
  own: v.string(),
  packages: v.array(packageSchema),
  /** Each text once; many packages have the same. */
  texts: v.array(v.string()),
});
/** What licences.json holds. */
export type Notices = Readonly<v.InferOutput<typeof noticesSchema>>;
/** The name of that file beside the built screens. */
export const NOTICES_FILE = 'licences.json';
