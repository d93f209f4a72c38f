import { createRandom } from '../../core/base/index.ts';
import type { AreaGeometry, Book, Position, Property } from '../../core/book/index.ts';
import { localPlane } from '../../core/geometry/index.ts';
import { measureBook } from '../../core/measure/index.ts';
import { keptFigures } from '../../core/passes/index.ts';
import { buildProblem } from '../../core/plan/problem/index.ts';
import { sampleBook } from '../support/samples.ts';
import { inventRound, type RoundShape } from './rounds.ts';

/** Lots are made up to so much narrower or wider than those of the sample, so that no two are alike. */
const LEAST_SCALE = 0.8;
const MOST_SCALE = 1.25;

/**
 * An invented round whose lawns are drawn: the house lots of the mixed day of the samples, each stretched at random along and across, with
 * their houses, drives, walks and beds, where the round has a lawn.
 */
export function drawnRound(shape: RoundShape, seed: number): Book {
  const random = createRandom(seed);
  const lots = sampleBook('mixed-day').properties.filter((each) => each.zones.length === 2);
  const book = inventRound(shape, seed);
  const properties = book.properties.map((lawn, index): Property => {
    const lot = lots[index % lots.length];
    if (lot === undefined) throw new Error('the mixed day has no lots');
    const stretch = (): number => LEAST_SCALE + (MOST_SCALE - LEAST_SCALE) * random.unit();
    const move = mover(lot.parking, lawn.parking, stretch(), stretch());
    const zones = lot.zones.map((zone) =>
      zone.shape.kind === 'stated'
        ? zone
        : { ...zone, shape: { ...zone.shape, geometry: movedArea(zone.shape.geometry, move) } },
    );
    const exclusions = lot.exclusions.map((each) => ({ ...each, geometry: movedArea(each.geometry, move) }));
    const gates = lot.gates.map((gate) => (gate.at === undefined ? gate : { ...gate, at: move(gate.at) }));
    const { id, name, parking } = lawn;
    return {
      ...lot,
      id,
      name,
      parking,
      gates,
      zones,
      exclusions,
      ...(lawn.hours === undefined ? {} : { hours: lawn.hours }),
    };
  });
  return { ...book, properties };
}

type Move = (at: Position) => Position;

function mover(from: Position, to: Position, along: number, across: number): Move {
  const [here, there] = [localPlane(from), localPlane(to)];
  return (at) => {
    const { x, y } = here.toPlane(at);
    return there.toDegrees({ x: x * along, y: y * across });
  };
}

function movedArea(area: AreaGeometry, move: Move): AreaGeometry {
  const moved = (rings: readonly (readonly Position[])[]) => rings.map((ring) => ring.map(move));
  return area.type === 'Polygon'
    ? { type: 'Polygon', coordinates: moved(area.coordinates) }
    : { type: 'MultiPolygon', coordinates: area.coordinates.map(moved) };
}

export const COLD_COLUMNS =
  'lawns,zones,figures of passes,measuring seconds,problem seconds from cold,problem seconds after that';

/** What the problem of such a round takes when no passes are known, and when all are: a row of `COLD_COLUMNS`. */
export function timeFromCold(shape: RoundShape, processorSeconds: () => number): string {
  const book = drawnRound(shape, 1);
  const before = keptFigures().length;
  const startSec = processorSeconds();
  const measures = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const measuredSec = processorSeconds();
  const build = (): number => {
    const fromSec = processorSeconds();
    const built = buildProblem(book, book.rounds[0]?.id ?? '', { measures });
    if (!built.ok) throw new Error(built.error.detail);
    return processorSeconds() - fromSec;
  };
  const cold = build();
  const figures = keptFigures().length - before;
  const seconds = [measuredSec - startSec, cold, build()].map((each) => each.toFixed(2));
  return [book.properties.length, book.properties.flatMap((each) => each.zones).length, figures, ...seconds].join(',');
}
