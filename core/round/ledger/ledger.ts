import type { Book, Property } from '../../book/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { add, contentsOf, sumAmounts, unweighed } from './contents.ts';
import { countsFor, limitsOf } from './limits.ts';
import { readSeason, type Season, type SeasonOptions } from './season.ts';
import type { Amounts, Application, ByProduct, LawnYear, Limit, LimitUse, SeasonLedger, ZoneYear } from './types.ts';
import { sourceWords, sumWords } from './words.ts';

/** The ledger of one year, lawn by lawn. */
export type OpenLedger = {
  readonly limits: readonly Limit[];
  readonly lawn: (property: Property) => LawnYear;
  /** The whole of it from its lawns, with what could not be counted on them. */
  readonly close: (lawns: readonly LawnYear[]) => SeasonLedger;
};

/**
 * What went and will go down in one calendar year on the lawns of a book: products, active ingredients and nutrients, on 1,000 ft2 and in
 * all, from what was recorded and from what every round has planned that is not recorded yet, and how much of each limit that uses.
 *
 * A planned round with days in two years, whose plan is not at hand, counts in both.
 */
export function openLedger(book: Book, year: string, options: SeasonOptions): OpenLedger {
  const season = readSeason(book, options);
  const limits = limitsOf(book);
  const setting: Setting = { season, options, limits, contents: contentsOf(book), year };
  return {
    limits,
    lawn: (property) => lawnYear(setting, property),
    close: (lawns) => {
      const light = unweighed(book).map(
        (each) => `${each.name}: the weight of a gallon is not entered, so its nutrients are not counted.`,
      );
      const total = sumAmounts(lawns.map((each) => each.total));
      return { year, limits, lawns, total, gaps: [...light, ...season.gaps] };
    },
  };
}

/** The ledger of a whole book at once; see `openLedger`. */
export function seasonLedger(book: Book, year: string, options: SeasonOptions): SeasonLedger {
  const ledger = openLedger(book, year, options);
  return ledger.close(book.properties.map(ledger.lawn));
}

type Setting = {
  readonly season: Season;
  readonly options: SeasonOptions;
  readonly limits: readonly Limit[];
  readonly contents: (products: ByProduct) => Amounts;
  readonly year: string;
};

function lawnYear(setting: Setting, property: Property): LawnYear {
  const all = setting.season.at(property).filter((each) => each.years.includes(setting.year));
  const known = new Set(property.zones.map((each) => each.id));
  const strays = all.filter((each) => !known.has(each.zoneId));
  const zones = property.zones.map((zone) => {
    const own = all.filter((each) => each.zoneId === zone.id);
    const areaSqFt = setting.options.ground.areaSqFt(property, zone.id);
    return zoneYear(setting, { zoneId: zone.id, name: zone.name, areaSqFt }, [...own, ...strays], own);
  });
  const gone = [...new Set(strays.map((each) => each.zoneId))].map((zoneId) => {
    const own = strays.filter((each) => each.zoneId === zoneId);
    return zoneYear(setting, { zoneId, name: `${zoneId} (no longer in the book)`, areaSqFt: null }, own, own);
  });
  const worst = setting.limits.flatMap((limit) => worstUse([...zones, ...gone], limit));
  return {
    propertyId: property.id,
    name: property.name,
    zones: [...zones, ...gone],
    total: sumAmounts([...zones, ...gone].map((each) => each.total)),
    worst,
    share: worst.reduce((most, each) => Math.max(most, each.share), 0),
  };
}

/** @param counted what counts against limits; `own` what lies on this zone and nowhere else */
function zoneYear(
  { limits, contents }: Setting,
  zone: Pick<ZoneYear, 'zoneId' | 'name' | 'areaSqFt'>,
  counted: readonly Application[],
  own: readonly Application[],
): ZoneYear {
  const rates = new Map<string, number>();
  const amounts = new Map<string, number>();
  for (const each of counted) for (const [id, rate] of each.rates) add(rates, id, rate);
  for (const each of own) for (const [id, rate] of each.rates) add(amounts, id, (rate * each.treatedSqFt) / 1000);
  return {
    ...zone,
    applications: counted,
    per1000: contents(rates),
    total: contents(amounts),
    uses: limits.flatMap((limit) => useOf(limit, counted)),
  };
}

function useOf(limit: Limit, applications: readonly Application[]): readonly LimitUse[] {
  const counts = applications.map((each) => countsFor(limit, each));
  const used =
    limit.kind === 'product-application' ? Math.max(0, ...counts) : counts.reduce((sum, each) => sum + each, 0);
  return used > 0 ? [{ limitId: limit.id, used, share: used / limit.most }] : [];
}

function worstUse(zones: readonly ZoneYear[], limit: Limit): LawnYear['worst'] {
  let worst: LawnYear['worst'][number] | null = null;
  for (const { zoneId, uses } of zones) {
    const use = uses.find((each) => each.limitId === limit.id);
    if (use !== undefined && use.share > (worst?.share ?? 0)) worst = { ...use, zoneId };
  }
  return worst === null ? [] : [worst];
}

/** How a zone comes to what it has used of a limit, in words; of one application the largest. */
export function arithmeticOf(
  limit: Limit,
  { applications }: ZoneYear,
  year: string,
  system: UnitSystem = 'us',
): string {
  const parts = applications
    .map((each) => ({ from: `in ${sourceWords(each)}`, amount: countsFor(limit, each) }))
    .filter((each) => each.amount > 0);
  if (limit.kind !== 'product-application') return sumWords(limit, parts, year, system);
  const [largest] = parts.toSorted((one, other) => other.amount - one.amount);
  return sumWords(limit, largest === undefined ? [] : [largest], '', system);
}

/** What a round of the book still has before it, of one product. */
export type PlannedAmount = {
  readonly roundId: string;
  readonly roundName: string;
  readonly productId: string;
  /** In the product's unit, from rates and ground. */
  readonly amount: number;
};

/** Sums of what is planned, property by property. */
export type PlannedSums = {
  readonly add: (property: Property) => void;
  readonly close: () => readonly PlannedAmount[];
};

/**
 * What rounds have planned that is not recorded yet, by round and product.
 *
 * @param wanted ids of the rounds that are asked for
 */
export function plannedSums(book: Book, options: SeasonOptions, wanted: ReadonlySet<string>): PlannedSums {
  const asked = { ...book, rounds: book.rounds.filter((each) => wanted.has(each.id)) };
  const season = readSeason(asked, options);
  const rounds = new Map(asked.rounds.map((each) => [each.id, { name: each.name, sums: new Map<string, number>() }]));
  return {
    add: (property) => {
      for (const each of season.at(property)) {
        const sums = each.status === 'planned' ? rounds.get(each.roundId)?.sums : undefined;
        if (sums === undefined) continue;
        for (const [productId, rate] of each.rates) add(sums, productId, (rate * each.treatedSqFt) / 1000);
      }
    },
    close: () =>
      [...rounds].flatMap(([roundId, { name, sums }]) =>
        [...sums]
          .filter(([, amount]) => amount > 0)
          .map(([productId, amount]) => ({ roundId, roundName: name, productId, amount })),
      ),
  };
}
