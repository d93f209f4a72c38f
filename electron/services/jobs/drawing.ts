import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import type { PassDrawings } from '../../../core/contract/index.ts';
import { directionOptions, passHeadOf } from '../../../core/passes/index.ts';
import { answered, type Errand, sendErrand } from './errand.ts';
import type { DrawMessage, DrawOrder, DrawWish } from './messages.ts';

/** Which passes a screen asks for. */
export type DrawRequest = {
  readonly propertyId: string;
  readonly zoneId: string;
  readonly machineId: string;
  readonly headId: string;
};

/**
 * Lays the passes of heads over zones, one after the other in a thread of its own. A picture of null: the zone has no outline with turf.
 * Each drawing may fail by itself: `reference-missing` where zone or head is not there, `nothing-to-do` where the book does not say how
 * the head is driven, and the errors of the passes.
 */
export function drawPasses(workerFile: string, book: Book, wanted: readonly DrawRequest[]): Errand<PassDrawings> {
  const wishes = wanted.map((asked) => wishOf(book, asked));
  const sound = wishes.flatMap((wish) => (wish.ok ? [wish.value] : []));
  const together = ({ drawings }: DrawMessage): Result<PassDrawings> => {
    const left = [...drawings];
    return ok({ drawings: wishes.map((wish) => (wish.ok ? (left.shift() ?? ok(null)) : wish)) });
  };
  if (sound.length === 0) return answered(together({ drawings: [] }));
  const order: DrawOrder = { draw: sound, stopFlag: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT) };
  return sendErrand(workerFile, order, together);
}

function wishOf(book: Book, { propertyId, zoneId, machineId, headId }: DrawRequest): Result<DrawWish> {
  const property = book.properties.find((each) => each.id === propertyId);
  const zone = property?.zones.find((each) => each.id === zoneId);
  if (property === undefined || zone === undefined) {
    return err(
      'reference-missing',
      `property ${propertyId}, zone ${zoneId}`,
      'There is no such zone.',
      'Choose another one.',
    );
  }
  const machine = book.machines.find((each) => each.id === machineId);
  const head = machine?.heads.find((each) => each.id === headId);
  if (machine === undefined || head === undefined) {
    return err(
      'reference-missing',
      `machine ${machineId}, head ${headId}`,
      'There is no such head.',
      'Choose another one.',
    );
  }
  const where = `${zone.name}, ${machine.name}, ${head.name}`;
  const passHead = passHeadOf(head);
  if (passHead === null) {
    const hint = 'Say in the Shed how it is driven: overlap, trim passes and turns.';
    return err('nothing-to-do', where, 'The book does not say how this head is driven.', hint);
  }
  return ok({
    property,
    zoneId,
    head: passHead,
    options: directionOptions(zone, head.passes ?? null),
    slopeDeg: zone.slopeDeg,
    where,
  });
}
