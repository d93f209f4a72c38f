import { err, type Issue, ok, type Result } from '../../../core/base/index.ts';
import type { Book, Machine } from '../../../core/book/index.ts';
import { type PassHead, passHeadOf } from '../../../core/passes/index.ts';
import { formatNumber } from '../../../core/units/index.ts';
import { type Typed, UsageFault } from '../command.ts';

/** Common practice, no source: 4 in of overlap, one pass round the edge, 4 s a turn, 3.5 mph. */
const USUAL = { overlapFt: 1 / 3, trimPasses: 1, turnSec: 4, speedMph: 3.5 };

/** Ground of a book or of another file, read as a book without machines. */
export type Ground = {
  readonly book: Book;
  readonly where: string;
  readonly issues: readonly Issue[];
  readonly isBook: boolean;
};
/** A head of the book, or the one of the command line, and from which slope on it goes up and down. */
export type NamedHead = {
  readonly machineId: string | null;
  readonly headId: string | null;
  readonly name: string;
  readonly head: PassHead;
  readonly upAndDownFromDeg: number | undefined;
};

/** The heads that are asked for: those of the book, or the one that the command line describes. */
export function headsOf({ book, where, isBook }: Ground, typed: Typed): Result<readonly NamedHead[]> {
  const given = numberOf(typed, 'swath-ft');
  const speedMph = numberOf(typed, 'speed-mph');
  const steepDeg = numberOf(typed, 'up-and-down-from');
  const told = {
    ...numberAs('overlapFt', numberOf(typed, 'overlap-ft')),
    ...numberAs('trimPasses', numberOf(typed, 'trim')),
    ...numberAs('turnSec', numberOf(typed, 'turn-sec')),
    ...numberAs('trimSwathFt', numberOf(typed, 'trim-swath-ft')),
    ...numberAs('transitMph', numberOf(typed, 'transit-mph')),
    ...numberAs('speedMph', speedMph),
    ...sectionsOf(typed),
    ...shieldOf(typed),
    ...(typed.flags.has('square-corners') ? { squareCorners: true } : {}),
    ...markOf(typed),
  };
  if (given !== undefined) {
    const head = { ...USUAL, ...told, swathFt: given };
    const name = `${formatNumber(given, 2)} ft swath`;
    return ok([{ machineId: null, headId: null, name, head, upAndDownFromDeg: steepDeg }]);
  }
  if (!isBook) throw new UsageFault('--swath-ft is missing: this file has no machines.');
  const id = typed.options.machine;
  const machines = book.machines.filter((each) => id === undefined || each.id === id);
  if (machines.length === 0) return noMachine(book, where, id);
  const heads = machines.flatMap((machine) =>
    machine.heads.map(
      (head): NamedHead => ({
        machineId: machine.id,
        headId: head.id,
        name: `${machine.name}, ${head.name}`,
        head: { ...USUAL, swathFt: head.swathFt, speedMph: head.speedMph, ...passHeadOf(head), ...told },
        upAndDownFromDeg: steepDeg ?? head.passes?.upAndDownFromDeg,
      }),
    ),
  );
  return heads.length > 0 ? ok(heads) : noHead(machines, where);
}

function noHead(machines: readonly Machine[], where: string): Result<never> {
  const names = machines.map((each) => each.name).join(', ');
  const hint = 'Give it a head with its swath and speed, or give --swath-ft.';
  return err('nothing-to-do', `${where}, machines`, `${names}: no head to spray or spread with.`, hint);
}

const numberAs = <Name extends keyof PassHead>(name: Name, value: number | undefined): Partial<Record<Name, number>> =>
  value === undefined ? {} : ({ [name]: value } as Record<Name, number>);

function sectionsOf(typed: Typed): Pick<PassHead, 'sectionsFt'> {
  const given = typed.options['sections-ft'];
  return given === undefined ? {} : { sectionsFt: given.split(',').map((each) => numberIn('sections-ft', each)) };
}

function shieldOf(typed: Typed): Pick<PassHead, 'shieldedSide'> {
  const side = typed.options.shield;
  if (side === undefined) return {};
  if (side !== 'left' && side !== 'right') throw new UsageFault(`--shield is left or right, not "${side}".`);
  return { shieldedSide: side };
}

function markOf(typed: Typed): Pick<PassHead, 'mark'> {
  const what = typed.options.mark;
  const flOzPer1000Ft = numberOf(typed, 'mark-fl-oz');
  if (what === undefined && flOzPer1000Ft === undefined) return {};
  if (what !== 'foam' && what !== 'dye') throw new UsageFault(`--mark is foam or dye, not "${what ?? ''}".`);
  if (flOzPer1000Ft === undefined) throw new UsageFault('--mark needs --mark-fl-oz: how much for 1,000 ft.');
  return { mark: { what, flOzPer1000Ft } };
}

function noMachine(book: Book, where: string, id: string | undefined): Result<never> {
  const known = book.machines.map((each) => each.id).join(', ');
  return err(
    'reference-missing',
    `${where}, machines`,
    id === undefined ? 'The book has no machine.' : `The book has no machine "${id}".`,
    known === '' ? 'Add a machine to the book, or give --swath-ft.' : `It has these: ${known}.`,
  );
}

/** The number after an option; undefined where it was not given. Whether it makes sense is for the passes to say. */
export function numberOf(typed: Typed, name: string): number | undefined {
  const given = typed.options[name];
  return given === undefined ? undefined : numberIn(name, given);
}

function numberIn(name: string, given: string): number {
  const value = Number(given);
  if (given.trim() === '' || !Number.isFinite(value)) throw new UsageFault(`--${name} needs a number, not "${given}".`);
  return value;
}
