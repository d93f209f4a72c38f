import type { Book } from '../../book/index.ts';
import type { PlanDay, PlanLoad } from '../../plan/result/index.ts';
import { formatArea, formatMeasured, formatVolume, formatWeight, formatWithSmaller } from '../../units/index.ts';
import { type Block, type Fact, left, right } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import { LOAD_TICKETS } from '../texts/index.ts';
import { clockWord, compartmentWord, loadWord, materialWord, placeWord } from '../words.ts';
import { dayAmounts } from './amounts.ts';

/** All loads of a day with what they take together, and the cautions for whoever mixes. */
export function overview(book: Book, day: PlanDay): readonly Block[] {
  const words = LOAD_TICKETS.overview;
  if (day.loads.length === 0) return [{ kind: 'note', text: LOAD_TICKETS.noLoads }, USUAL_CAUTIONS];
  return [
    { kind: 'facts', facts: sums(book, day.loads) },
    USUAL_CAUTIONS,
    {
      kind: 'table',
      columns: [
        right(words.load, 8),
        right(words.time, 12),
        left(words.where, 24),
        left(words.what, 42),
        right(words.covers, 14),
      ],
      rows: day.loads.map((load) => [
        String(load.number),
        clockWord(book, load.startSec),
        whereWord(book, load),
        words.filled(
          `${loadWord(load, book.units)} ${materialWord(book, load.materialId)}`,
          compartmentWord(book, load.compartmentId),
        ),
        formatArea(load.coversSqFt, book.units),
      ]),
    },
  ];
}

function sums(book: Book, loads: readonly PlanLoad[]): readonly Fact[] {
  const { mix, water, dry } = LOAD_TICKETS.overview;
  const { units } = book;
  const { waterGal, dryLb, products } = dayAmounts(loads);
  const mixGal = loads.reduce((sum, each) => sum + each.volumeGal + each.sumpGal, 0);
  return [
    ...(mixGal > 0 ? [{ label: mix, value: formatVolume(mixGal, units) }] : []),
    ...(waterGal > 0 ? [{ label: water, value: formatVolume(waterGal, units) }] : []),
    ...(dryLb > 0 ? [{ label: dry, value: formatWeight(dryLb, units) }] : []),
    ...products.map(({ productId, amount, unit }) => {
      const smaller = formatWithSmaller(amount, unit, units);
      const whole = formatMeasured(amount, unit, units);
      return { label: materialWord(book, productId), value: smaller === '' ? whole : `${whole} (${smaller})` };
    }),
  ];
}

/** Where a load is filled. */
export function whereWord(book: Book, load: PlanLoad): string {
  if (load.fillPointId !== '') return placeWord(book, load.fillPointId);
  if (load.atPropertyId === '') return LOAD_TICKETS.yard;
  const property = placeWord(book, load.atPropertyId);
  return load.fromBags ? LOAD_TICKETS.fromBags(property) : LOAD_TICKETS.fromRig(property);
}
