import type { Sheet } from '../blocks.ts';
import type { DayInput } from '../input.ts';
import { MAP_PAGES } from '../texts/index.ts';
import { dateWord } from '../words.ts';
import { lawnBlocks } from './lawn.ts';
import { wayBlocks } from './way.ts';

/** The way of a day over all its stops, then every lawn with the passes of each machine that is driven there. */
export function mapPages(input: DayInput): Sheet {
  const { book, plan, day } = input;
  return {
    id: `map-pages ${day.date} ${day.rigId}`,
    title: MAP_PAGES.title(day.rigName),
    subtitle: dateWord(book, day.date),
    invented: book.invented || plan.invented,
    ...(input.pictures === undefined ? {} : { pictures: input.pictures }),
    blocks:
      day.stops.length === 0
        ? [{ kind: 'note', text: MAP_PAGES.noStops }]
        : [...wayBlocks(input), { kind: 'page', blocks: day.stops.flatMap((stop) => lawnBlocks(input, stop)) }],
  };
}
