import type { Exclusion } from '../../book/index.ts';
import { freeId } from '../drafts.ts';
import { groundOf, likeness } from '../likeness.ts';
import type { ExclusionRecord } from '../record.ts';
import { sameOutline } from '../same-outline.ts';
import { type Merged, sameFigure } from './shape.ts';

/** Two drawings of one exclusion share more than this of the ground of both. */
const LEAST_ALIKE = 0.5;

/** The exclusions of a property with those of the file: one that the file does not speak of stays. */
export function mergeExclusions(
  before: readonly Exclusion[],
  records: readonly ExclusionRecord[],
): Merged<readonly Exclusion[]> {
  const all = [...before];
  const free = new Set(before.keys());
  const ids = new Set(before.map((each) => each.id));
  const words: string[] = [];
  let added = 0;
  for (const record of records) {
    const place = findExclusion(all, free, record);
    const exclusion = place === null ? undefined : all[place];
    if (place === null || exclusion === undefined) {
      const fresh = newExclusion(ids, record);
      ids.add(fresh.id);
      all.push(fresh);
      added += 1;
      continue;
    }
    free.delete(place);
    const merged = mergeExclusion(exclusion, record);
    all[place] = merged.value;
    words.push(...merged.words);
  }
  if (added > 0) words.push(added === 1 ? '1 exclusion added' : `${added} exclusions added`);
  return { value: all, words };
}

/**
 * The exclusion that a record is: the one with its outline, else with its id where both share ground, else the one most alike. An
 * id alone is not enough, since files number their records each for itself.
 */
function findExclusion(
  all: readonly Exclusion[],
  free: ReadonlySet<number>,
  { id, ground }: ExclusionRecord,
): number | null {
  const left = [...free];
  const same = left.filter((place) => sameOutline(all[place]?.geometry ?? ground.geometry, ground.geometry));
  const named = same.find((place) => all[place]?.id === id) ?? same[0];
  if (named !== undefined) return named;
  let best: number | null = null;
  let most = LEAST_ALIKE;
  for (const place of left) {
    const exclusion = all[place];
    const own = exclusion === undefined ? null : groundOf(exclusion.geometry);
    const alike = own === null ? null : likeness(ground, own);
    if (alike === null) continue;
    if (exclusion?.id === id) return place;
    if (alike <= most) continue;
    best = place;
    most = alike;
  }
  return best;
}

function mergeExclusion(exclusion: Exclusion, record: ExclusionRecord): Merged<Exclusion> {
  const words: string[] = [];
  let after = exclusion;
  const called = exclusion.name === '' ? exclusion.what : exclusion.name;
  if (!sameOutline(exclusion.geometry, record.ground.geometry)) {
    after = { ...after, geometry: record.ground.geometry };
    words.push(`outline of ${called}`);
  }
  if (record.what !== null && record.what !== exclusion.what) {
    after = { ...after, what: record.what };
    words.push(`${called} is ${record.what}`);
  }
  if (record.keepAwayFt !== null && !sameFigure(record.keepAwayFt, exclusion.keepAwayFt)) {
    after = { ...after, keepAwayFt: record.keepAwayFt };
    words.push(`keep-away distance of ${called}`);
  }
  if (record.name !== null && record.name !== exclusion.name) {
    after = { ...after, name: record.name };
    words.push(`${called} is now called ${record.name}`);
  }
  return { value: after, words };
}

function newExclusion(ids: ReadonlySet<string>, record: ExclusionRecord): Exclusion {
  const what = record.what ?? 'other';
  return {
    id: freeId(record.id ?? what, (each) => ids.has(each)),
    name: record.name ?? '',
    what,
    geometry: record.ground.geometry,
    keepAwayFt: record.keepAwayFt ?? 0,
  };
}
