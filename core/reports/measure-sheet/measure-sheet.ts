import { formatArea } from '../../units/index.ts';
import type { Block, Sheet } from '../blocks.ts';
import { CAUTION_WORDS, USUAL_CAUTIONS } from '../cautions.ts';
import type { PropertyInput } from '../input.ts';
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
    title: `Measure sheet: ${property.name}`,
    subtitle: property.address,
    invented: book.invented,
    blocks: [
      factsBlock(input),
      ...(change ? [{ kind: 'note' as const, text: `Before: ${changeWords(change, book.units)}.` }] : []),
      planBlock(input),
      ...passesBlock(input),
      zonesBlock(input),
      ...workingBlocks(input),
      ...(property.exclusions.length === 0 ? [] : [exclusionsBlock(input)]),
      ...(property.gates.length === 0 ? [] : [gatesBlock(input)]),
      { kind: 'note', text: HOW_MEASURED },
      ...measure.issues.map((each): Block => ({ kind: 'note', text: `${each.where}: ${each.message}` })),
      ...quoteBlocks(input),
    ],
  };
}

const HOW_MEASURED =
  'Areas of outlines are on the ellipsoid, overlaps counted once, ground left out and its keep-away distance cut off, slope added. A stated area is taken as it was written down. ± is how far the outline may be off times the length of every edge of what is treated; zones are added up, since one hand drew them all.';

function factsBlock({ book, property, measure, reader }: PropertyInput): Block {
  const { units } = book;
  const cautions = property.cautions.map((each) => CAUTION_WORDS[each]).join(', ');
  const facts = [
    { label: 'Treatable turf', value: totalWords(measure, units) },
    { label: 'Left out', value: formatArea(measure.exclusionsSqFt, units) },
    { label: 'Measured', value: property.measuredOn ?? 'date not entered' },
    { label: 'Mind', value: cautions || 'nothing entered' },
  ];
  if (reader !== 'customer' && property.placedBy !== undefined) {
    facts.push({ label: 'Parking point', value: parkingWords(property) });
  }
  return { kind: 'facts', facts };
}

function quoteBlocks({ book, quote, reader }: PropertyInput): readonly Block[] {
  if (quote === null || quote === undefined || quote.visits.length === 0) return [];
  if (reader === 'customer') return [namesBlock(quote), ...priceBlock(quote), USUAL_CAUTIONS];
  return [
    { kind: 'heading', text: 'What the treatments take' },
    takesBlock(quote, book.units),
    ...fitBlocks(quote, book.units),
    ...costBlocks(quote),
    USUAL_CAUTIONS,
  ];
}
