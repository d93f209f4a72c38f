import { type Book, readingOf } from '../../../book/index.ts';
import type { PlanDay } from '../../../plan/result/index.ts';
import { formatArea, formatClock, formatVolume, formatWeight, formatWidth } from '../../../units/index.ts';
import type { RefillView, StopView, WorkView } from './day-view.ts';
import { compartmentName, materialName } from './names.ts';

/** The same words in every kind of file that has room for a sentence. */

/** A time of day by the clock that the book is read by. */
export function clockWords(book: Book, sec: number): string {
  return formatClock(sec, readingOf(book).clock);
}

/** "8:05 am to 8:40 am" */
export function spanWords(book: Book, fromSec: number, toSec: number): string {
  return `${clockWords(book, fromSec)} to ${clockWords(book, toSec)}`;
}

/** "Back lawn: Spray one with Rider, boom, 4,200 ft², load 3". */
export function workWords({ units }: Book, work: WorkView): string {
  const how = [work.methodName, ...(work.handTrim === true ? ['hand trim'] : [])].join(', ');
  const loads = work.loadNumbers.length === 0 ? '' : `, load ${work.loadNumbers.join(', ')}`;
  return `${work.zone}: ${work.treatment} with ${how}, ${formatArea(work.treatedSqFt, units)}${loads}`;
}

/** Times, work on every zone, gates, cautions and the note of a stop: a line each. */
export function stopLines(book: Book, stop: StopView): readonly string[] {
  const gates = (stop.property?.gates ?? []).map(
    ({ name, clearWidthIn, locked }) =>
      `Gate ${name}: ${formatWidth(clearWidthIn, book.units)}${locked ? ', locked' : ''}`,
  );
  const cautions = (stop.property?.cautions ?? []).map((each) => each.replaceAll('-', ' '));
  return [
    spanWords(book, stop.arriveSec, stop.leaveSec),
    ...stop.works.map((work) => workWords(book, work)),
    ...gates,
    ...(cautions.length === 0 ? [] : [`Watch for: ${cautions.join(', ')}`]),
    ...(stop.property?.note ? [`Note: ${stop.property.note}`] : []),
  ];
}

/** What is filled at a refill: "Rider, tank: 18.0 gal Mix one". */
export function refillLines(book: Book, refill: RefillView): readonly string[] {
  const { units } = book;
  const fills = refill.fills.map(({ compartmentId, materialId, volumeGal, weightLb }) => {
    const amount = volumeGal > 0 ? formatVolume(volumeGal, units) : formatWeight(weightLb, units);
    return `${compartmentName(book, compartmentId)}: ${amount} ${materialName(book, materialId)}`;
  });
  const stock = refill.stock.map(({ stock: what, productId, volumeGal, weightLb, bags }) =>
    what === 'water'
      ? `nurse tank: ${formatVolume(volumeGal, units)} water`
      : `onto the rig: ${bags} bags (${formatWeight(weightLb, units)}) ${materialName(book, productId)}`,
  );
  return [spanWords(book, refill.startSec, refill.endSec), ...fills, ...stock];
}

/** "2027-03-16 Rig North" */
export function dayName({ date, rigName }: PlanDay): string {
  return `${date} ${rigName}`;
}
