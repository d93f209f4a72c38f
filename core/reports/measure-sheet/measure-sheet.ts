import { formatArea } from '../../units/index.ts';
import type { Block, Fact, Sheet } from '../blocks.ts';
import { USUAL_CAUTIONS } from '../cautions.ts';
import type { PropertyInput } from '../input.ts';
import { CAUTION_WORDS, MEASURE_SHEET } from '../texts/index.ts';
import { exclusionsBlock, gatesBlock, passesBlock, planBlock, workingBlocks, zonesBlock } from './ground-blocks.ts';
import { costBlocks, fitBlocks, namesBlock, priceBlock, takesBlock } from './quote-blocks.ts';
import { changeWords, parkingWords, totalWords } from './words.ts';

/**
 * A measured lawn: plan, zones with their areas, likely errors and how they were found, what is left out, gates and cautions;
 * with a quote also machines that fit, products, minutes, cost and price. The customer's copy has the ground and the price.
 */
export function measureSheet(input: PropertyInput): Sheet {
  const { book, property, measure, change } = input;
  return {
    id: `measure-sheet ${property.id}`,
    title: MEASURE_SHEET.title(property.name),
    subtitle: property.address,
    invented: book.invented,
    blocks: [
      factsBlock(input),
      ...(change ? [{ kind: 'note' as const, text: MEASURE_SHEET.before(changeWords(change, book.units)) }] : []),
      planBlock(input),
      ...passesBlock(input),
      zonesBlock(input),
      ...workingBlocks(input),
      ...(property.exclusions.length === 0 ? [] : [exclusionsBlock(input)]),
      ...(property.gates.length === 0 ? [] : [gatesBlock(input)]),
      { kind: 'note', text: MEASURE_SHEET.howMeasured },
      ...measure.issues.map((each): Block => ({ kind: 'note', text: `${each.where}: ${each.message}` })),
      ...quoteBlocks(input),
    ],
  };
}

function factsBlock({ book, property, measure, reader }: PropertyInput): Block {
  const { units } = book;
  const cautions = property.cautions.map((each) => CAUTION_WORDS[each]).join(', ');
  const facts: Fact[] = [
    { label: MEASURE_SHEET.turf, value: totalWords(measure, units) },
    { label: MEASURE_SHEET.leftOut, value: formatArea(measure.exclusionsSqFt, units) },
    { label: MEASURE_SHEET.measured, value: property.measuredOn ?? MEASURE_SHEET.noDate },
    { label: MEASURE_SHEET.mind, value: cautions || MEASURE_SHEET.nothingEntered },
  ];
  if (reader !== 'customer' && property.placedBy !== undefined) {
    facts.push({ label: MEASURE_SHEET.parkingPoint, value: parkingWords(property) });
  }
  return { kind: 'facts', facts };
}

function quoteBlocks({ book, quote, reader }: PropertyInput): readonly Block[] {
  if (quote === null || quote === undefined || quote.visits.length === 0) return [];
  if (reader === 'customer') return [namesBlock(quote), ...priceBlock(quote), USUAL_CAUTIONS];
  return [
    { kind: 'heading', text: MEASURE_SHEET.takes },
    takesBlock(quote, book.units),
    ...fitBlocks(quote, book),
    ...costBlocks(quote),
    USUAL_CAUTIONS,
  ];
}
