import { err, ok, type Result } from '../../../core/base/index.ts';
import type { Book, Property, Round } from '../../../core/book/index.ts';
import { bandAreaSqFt, lastChange, measureProperty } from '../../../core/measure/index.ts';
import type { Plan, PlanDay } from '../../../core/plan/result/index.ts';
import { lawnQuote } from '../../../core/quote/index.ts';
import { type DayWays, SHEETS, type Sheet, type SheetKind } from '../../../core/reports/index.ts';
import { type SeasonLedger, seasonLedger } from '../../../core/round/ledger/index.ts';
import { quantity, type Reading } from '../../../core/units/index.ts';
import { fileOf, type Typed, UsageFault } from '../command.ts';
import { type BookInput, daysOfPlan, propertiesOf, rigOf, roundOf } from '../input/index.ts';
import { layPasses } from './report-passes.ts';

/** A sheet and what it is of. */
export type Made = {
  readonly kind: SheetKind;
  readonly sheet: Sheet;
  readonly day?: PlanDay;
  readonly property?: Property;
};

const READINGS = {
  units: ['us', 'metric'],
  clock: ['12-hour', '24-hour'],
  dates: ['month-first', 'day-first'],
} as const satisfies { readonly [Name in keyof Reading]: readonly Reading[Name][] };

/** How sheets are to be read, where it is said; else as the book is. Throws UsageFault. */
function readingOptions(typed: Typed): Partial<Reading> {
  const said = Object.entries(READINGS).flatMap(([name, known]) => {
    const wish = typed.options[name];
    if (wish === undefined) return [];
    if (!known.some((each) => each === wish))
      throw new UsageFault(`--${name} knows ${known.join(' and ')}; not "${wish}".`);
    return [[name, wish]];
  });
  return Object.fromEntries(said) as Partial<Reading>;
}

/** Records last as they were written; everything else is told as it is to be read. */
function bookFor(kind: SheetKind, { book, asRead }: Source): Book {
  return kind.holdsRecords === true ? book : asRead;
}

/** The kinds that were asked for; without a wish all that the crew takes along on a day. Throws UsageFault. */
export function kindsOf(typed: Typed): readonly SheetKind[] {
  const { sheet } = typed.options;
  const found = SHEETS.filter((each) =>
    sheet === undefined ? each.scope === 'day' && each.forOffice !== true : each.id === sheet,
  );
  if (found.length === 0) {
    throw new UsageFault(`--sheet knows ${SHEETS.map((each) => each.id).join(', ')}; not "${sheet}".`);
  }
  if (typed.operands.PLAN === undefined && found.some((each) => each.scope === 'day')) {
    throw new UsageFault('PLAN is missing: sheets of a day are made from a plan.');
  }
  return found;
}

type Source = {
  readonly book: Book;
  /** The book as it is to be read. */
  readonly asRead: Book;
  readonly plan: Plan | null;
  readonly round: Round | null;
  readonly days: readonly PlanDay[];
  readonly properties: readonly Property[];
  readonly forCustomer: boolean;
  readonly year: string;
  readonly fleetPlans: readonly FleetPlan[];
  /** The drives along the roads beside the book. */
  readonly ways?: DayWays;
};

/** The plan of a round by one of the fleets of the book. */
export type FleetPlan = { readonly fleetId: string; readonly plan: Plan };

/** All sheets of the kinds, day by day and then the others. Errors: 'reference-missing' for what is named and not there. */
export function sheetsOf(
  { book, where, ways }: BookInput,
  plan: Plan | null,
  fleetPlans: readonly FleetPlan[],
  kinds: readonly SheetKind[],
  typed: Typed,
): Result<readonly Made[]> {
  const roundId = plan?.roundId ?? typed.options.round;
  const needsRound = kinds.some((each) => each.scope === 'round');
  const round = roundId === undefined && !needsRound ? ok(null) : roundOf(book, where, roundId);
  if (!round.ok) return round;
  const rig = rigOf(book, where, typed.options.rig);
  if (!rig.ok) return rig;
  const properties = propertiesNamed({ book, where }, round.value, typed.options.property);
  if (!properties.ok) return properties;
  const wantsDays = kinds.some((each) => each.scope === 'day');
  const days = wantsDays && plan !== null ? daysOfPlan(plan, typed, fileOf(typed, 'PLAN')) : ok([]);
  if (!days.ok) return days;
  const forCustomer = typed.flags.has('customer');
  const year = typed.options.year ?? lastYear(book);
  if (typed.options.year !== undefined && !/^\d{4}$/.test(year))
    throw new UsageFault(`--year is a year such as 2027; not "${year}".`);
  const source = {
    book,
    asRead: { ...book, ...readingOptions(typed) },
    plan,
    round: round.value,
    days: days.value,
    properties: properties.value,
    forCustomer,
    year,
    fleetPlans,
    ...(ways === undefined ? {} : { ways }),
  };
  const byDay = days.value.flatMap((day) => kinds.flatMap((kind) => daySheet(kind, source, day)));
  return ok([...byDay, ...kinds.flatMap((kind) => otherSheets(kind, source))]);
}

function propertiesNamed(
  { book, where }: Pick<BookInput, 'book' | 'where'>,
  round: Round | null,
  id: string | undefined,
): Result<readonly Property[]> {
  if (id === undefined) return ok(round === null ? book.properties : propertiesOf(book, round));
  const found = book.properties.filter((each) => each.id === id);
  if (found.length > 0) return ok(found);
  const detail = `The book has no property "${id}".`;
  return err('reference-missing', `${where}, properties`, detail, 'measure BOOK lists the properties with their ids.');
}

function daySheet(kind: SheetKind, source: Source, day: PlanDay): readonly Made[] {
  const { plan, ways } = source;
  if (kind.scope !== 'day' || plan === null) return [];
  const book = bookFor(kind, source);
  const passes = kind.drawsPasses === true ? { passes: layPasses(book, day) } : {};
  const along = ways === undefined ? {} : { ways };
  return [{ kind, day, sheet: kind.make({ scope: 'day', book, plan, day, ...passes, ...along }) }];
}

function otherSheets(kind: SheetKind, source: Source): readonly Made[] {
  const { plan, round, properties, forCustomer, fleetPlans } = source;
  const book = bookFor(kind, source);
  switch (kind.scope) {
    case 'day':
      return [];
    case 'property':
      return properties.map((property) => {
        const measure = measureProperty(property);
        const change = lastChange(property, measure);
        const quote = lawnQuote(book, property, measure);
        const reader = forCustomer ? 'customer' : 'office';
        return {
          kind,
          property,
          sheet: kind.make({ scope: 'property', book, property, measure, change, quote, reader }),
        };
      });
    case 'round':
      return round === null ? [] : [{ kind, sheet: kind.make({ scope: 'round', book, round, plan, fleetPlans }) }];
    case 'year':
      return [{ kind, sheet: kind.make({ scope: 'year', book, ledger: ledgerOf(source) }) }];
    case 'book':
      return [{ kind, sheet: kind.make({ scope: 'book', book }) }];
  }
}

/** The last year in which anything was recorded or is planned. */
function lastYear(book: Book): string {
  const dates = [...book.visits.map((each) => each.on), ...book.rounds.flatMap((each) => each.dates)];
  return (dates.toSorted().at(-1) ?? '').slice(0, 4);
}

/** The season's ledger on measured ground; days of the round are those of its plan. */
function ledgerOf({ book, plan, year }: Source): SeasonLedger {
  const measures = new Map(book.properties.map((each) => [each.id, measureProperty(each)]));
  const days = new Map(plan?.days.flatMap((day) => day.stops.map((stop) => [stop.propertyId, day.date] as const)));
  return seasonLedger(book, year, {
    ground: {
      areaSqFt: ({ id }, zoneId) => measures.get(id)?.zones.find((each) => each.zoneId === zoneId)?.areaSqFt ?? null,
      bandSqFt: (property, zone, { widthFt, along }) => bandAreaSqFt(property, zone, quantity(widthFt), along),
    },
    plannedDay: (roundId, propertyId) => (roundId === plan?.roundId ? days.get(propertyId) : undefined),
  });
}
