import type { PassPicture, PictureLeg } from '../../core/passes/index.ts';
import { formatBearing, metresToFeet, quantity } from '../../core/units/index.ts';
import { counted, type Formatter } from '../format/index.ts';

const NAMES: Readonly<Record<PictureLeg['kind'], string>> = {
  trim: 'Trim pass',
  corner: 'Run into a corner',
  swath: 'Swath',
  transit: 'Way without material',
};

/** "Swath 12 of 42": which stretch of its kind it is; the pieces of a trim pass that runs into corners break off count as one. */
export function legName({ legs }: PassPicture, at: number): string {
  const leg = legs[at];
  if (leg === undefined) return '';
  const countOf = (some: PassPicture['legs']): number =>
    some.filter((each) => each.kind === leg.kind && each.goesOn !== true).length;
  return `${NAMES[leg.kind]} ${countOf(legs.slice(0, at + 1))} of ${countOf(legs)}`;
}

/** "312 ft long, 5 ft wide, 1,560 ft² covered; begins at 8:12 min, takes 1:01 min". */
export function legWords({ legs }: PassPicture, at: number, words: Formatter): string {
  const leg = legs[at];
  if (leg === undefined) return '';
  const wideFt = metresToFeet(quantity<'m'>(leg.widthM));
  const parts = [`${words.length(leg.lengthFt)} long`];
  if (leg.kind !== 'transit') parts.push(`${words.length(wideFt)} wide`, `${words.area(leg.coveredSqFt)} covered`);
  return `${parts.join(', ')}; begins at ${clockOf(leg.fromMinutes)}, takes ${clockOf(leg.minutes)}`;
}

/** "8:12" from minutes. */
function clockOf(minutes: number): string {
  const seconds = Math.round(minutes * 60);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')} min`;
}

export type Figure = { readonly name: string; readonly words: string };

const percent = (share: number, words: Formatter): string => `${words.number(100 * share, share < 0.01 ? 2 : 1)} %`;

/** What the passes come to, figure by figure. */
export function figuresOf(picture: PassPicture, words: Formatter): readonly Figure[] {
  const { trimCount, cornerCount, swathCount, bearingDeg, mark } = picture;
  const corners = cornerCount === 0 ? '' : `, ${counted(cornerCount, 'run into a corner', 'runs into corners')}`;
  return [
    {
      name: 'passes',
      words: `${counted(trimCount, 'trim pass', 'trim passes')}${corners}, ${counted(swathCount, 'swath')}`,
    },
    ...(bearingDeg === null ? [] : [{ name: 'swaths run', words: formatBearing(bearingDeg) }]),
    { name: 'time', words: words.duration(Math.round(picture.minutes * 60)) },
    { name: 'way', words: `${words.length(picture.sprayedFt)} treating, ${words.length(picture.unsprayedFt)} not` },
    {
      name: 'gone over twice',
      words: `${percent(picture.overlapShare, words)}; ${words.number(picture.worstPasses)} times at the worst place`,
    },
    {
      name: 'not reached',
      words: `${percent(picture.missedShare, words)}, ${words.area(picture.handTrimSqFt)} to trim by hand`,
    },
    ...(mark === null
      ? []
      : [{ name: mark.what, words: `${words.product(mark.flOz, 'fl-oz')} over ${words.distance(mark.markedM)}` }]),
  ];
}
