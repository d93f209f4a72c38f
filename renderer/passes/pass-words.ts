import type { PassPicture, PictureLeg } from '../../core/passes/index.ts';
import { formatBearing, metresToFeet, quantity } from '../../core/units/index.ts';
import type { Formatter } from '../format/index.ts';
import { passesWords } from '../texts/index.ts';

const { leg: legTexts, figures: texts } = passesWords;

const NAMES: Readonly<Record<PictureLeg['kind'], string>> = legTexts.names;

/** "Swath 12 of 42": which stretch of its kind it is; the pieces of a trim pass that runs into corners break off count as one. */
export function legName({ legs }: PassPicture, at: number): string {
  const leg = legs[at];
  if (leg === undefined) return '';
  const countOf = (some: PassPicture['legs']): number =>
    some.filter((each) => each.kind === leg.kind && each.goesOn !== true).length;
  return legTexts.which(NAMES[leg.kind], countOf(legs.slice(0, at + 1)), countOf(legs));
}

/** "312 ft long, 5 ft wide, 1,560 ft² covered; begins at 8:12 min, takes 1:01 min". */
export function legWords({ legs }: PassPicture, at: number, words: Formatter): string {
  const leg = legs[at];
  if (leg === undefined) return '';
  const wideFt = metresToFeet(quantity<'m'>(leg.widthM));
  const parts = [legTexts.long(words.length(leg.lengthFt))];
  if (leg.kind !== 'transit')
    parts.push(legTexts.wide(words.length(wideFt)), legTexts.covered(words.area(leg.coveredSqFt)));
  return legTexts.told(parts.join(', '), clockOf(leg.fromMinutes), clockOf(leg.minutes));
}

/** "8:12" from minutes. */
function clockOf(minutes: number): string {
  const seconds = Math.round(minutes * 60);
  return legTexts.minutes(`${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`);
}

export type Figure = { readonly name: string; readonly words: string };

const percent = (share: number, words: Formatter): string => `${words.number(100 * share, share < 0.01 ? 2 : 1)} %`;

/** What the passes come to, figure by figure. */
export function figuresOf(picture: PassPicture, words: Formatter): readonly Figure[] {
  const { trimCount, cornerCount, swathCount, bearingDeg, mark } = picture;
  return [
    { name: texts.passes, words: texts.counts(trimCount, cornerCount, swathCount) },
    ...(bearingDeg === null ? [] : [{ name: texts.swathsRun, words: formatBearing(bearingDeg) }]),
    { name: texts.time, words: words.duration(Math.round(picture.minutes * 60)) },
    { name: texts.way, words: texts.wayOf(words.length(picture.sprayedFt), words.length(picture.unsprayedFt)) },
    {
      name: texts.twice,
      words: texts.twiceOf(percent(picture.overlapShare, words), words.number(picture.worstPasses)),
    },
    {
      name: texts.missed,
      words: texts.missedOf(percent(picture.missedShare, words), words.area(picture.handTrimSqFt)),
    },
    ...(mark === null
      ? []
      : [{ name: mark.what, words: texts.markOf(words.product(mark.flOz, 'fl-oz'), words.distance(mark.markedM)) }]),
  ];
}
