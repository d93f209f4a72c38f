/**
 * Reads the sheets of a day back from their text alone, as a stranger would who has nothing but the paper: text for a terminal, or
 * what pdftotext finds on the printed pages. It knows no plan, no book and no code of the sheets.
 */

/** Ground of one zone of one stop, ft2, added up over its rows. */
export type ReadDay = {
  readonly stops: number;
  readonly loads: number;
  readonly refills: number;
  /** From the first to the last row, and as the head of the sheet says, min. */
  readonly startMin: number;
  readonly homeMin: number;
  readonly dayMin: number;
  /** Stop number and zone, with the ground of all its rows. */
  readonly zoneSqFt: ReadonlyMap<string, number>;
  /** Water of all tickets, and liquid products with it, gal. */
  readonly waterGal: number;
  readonly mixGal: number;
  /** Dry material of all tickets, lb. */
  readonly dryLb: number;
  /** Products of all tickets, by their names, in their own units. */
  readonly products: ReadonlyMap<string, number>;
  /** Bags taken onto the rig. */
  readonly bags: number;
  /** Loads whose number stands beside a zone. */
  readonly loadsInUse: ReadonlySet<number>;
  readonly coveredSqFt: number;
};

const OUNCES_PER_GALLON = 128;
const TIME = String.raw`(\d{1,2}:\d\d [ap]m)`;

const figure = (text: string): number => Number(text.replaceAll(',', ''));

/** Minutes after midnight of "7:26 am". */
function minutes(clock: string): number {
  const [, hours = '', minute = '', half = ''] = /^(\d{1,2}):(\d\d) ([ap])m$/.exec(clock) ?? [];
  return (Number(hours) % 12) * 60 + Number(minute) + (half === 'p' ? 720 : 0);
}

/** Minutes of "9 h 50 min", "9 h" or "50 min". */
function length(text: string): number {
  const hours = /(\d+) h/.exec(text)?.[1] ?? '0';
  const rest = /(\d+) min/.exec(text)?.[1] ?? '0';
  return Number(hours) * 60 + Number(rest);
}

const found = (text: string, pattern: RegExp): string => pattern.exec(text)?.[1] ?? '';
const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

export function readDay(runSheet: string, loadTickets: string, truckList: string): ReadDay {
  return { ...readRunSheet(runSheet), ...readTickets(loadTickets), bags: readBags(truckList) };
}

function readRunSheet(text: string) {
  const zoneSqFt = new Map<string, number>();
  const loadsInUse = new Set<number>();
  let [stop, stops, refills] = [0, 0, 0];
  for (const line of text.split('\n')) {
    const head = new RegExp(String.raw`^\s*(\d+)\s+${TIME}\s+\S.* · until ${TIME}`).exec(line);
    if (head !== null) {
      stop = Number(head[1]);
      stops += 1;
      continue;
    }
    if (new RegExp(String.raw`${TIME}\s+Refill `).test(line)) refills += 1;
    const row = new RegExp(String.raw`${TIME}\s+(\S.*?)\s+([\d,.]+) ft²\s*([\d, ]*)$`).exec(line);
    if (row === null) continue;
    const zone = `${stop} ${(row[2] ?? '').split(/[:,]|\s{2,}/)[0]}`;
    zoneSqFt.set(zone, (zoneSqFt.get(zone) ?? 0) + figure(row[3] ?? ''));
    for (const number of (row[4] ?? '').split(',').filter((each) => each.trim() !== '')) loadsInUse.add(Number(number));
  }
  return {
    stops,
    refills,
    zoneSqFt,
    loadsInUse,
    startMin: minutes(found(text, new RegExp(String.raw`${TIME}\s+Start: `))),
    homeMin: minutes(found(text, new RegExp(`^Home ${TIME}`, 'm'))),
    dayMin: length(found(text, /(?:^|\s)Day:?\s+((?:\d+ h ?)?(?:\d+ min)?)/)),
  };
}

function readTickets(text: string) {
  const products = new Map<string, number>();
  let [loads, waterGal, mixGal, dryLb, coveredSqFt] = [0, 0, 0, 0, 0];
  const tickets = text.split(/^(?=[ \t]*Load \d+ of \d+: )/m).slice(1);
  for (const ticket of tickets) {
    loads += 1;
    const water = figure(found(ticket, /^\s*Water\s+([\d,.]+) gal/m) || '0');
    waterGal += water;
    mixGal += water;
    coveredSqFt += figure(found(ticket, /Must cover:?\s+([\d,.]+) ft²/));
    for (const [, name = '', amount = '', unit = ''] of ticket.matchAll(
      /^\s*(\S.*?)\s{2,}[\d,.]+ (?:fl oz|oz|lb)\/1,000 ft²\s+([\d,.]+) (fl oz|oz|lb)/gm,
    )) {
      products.set(name, (products.get(name) ?? 0) + figure(amount));
      if (unit === 'fl oz') mixGal += figure(amount) / OUNCES_PER_GALLON;
      if (water === 0 && unit === 'lb') dryLb += figure(amount);
    }
  }
  return { loads, waterGal, mixGal, dryLb, products, coveredSqFt };
}

/** Bags that the fill plan takes onto the rig. */
function readBags(text: string): number {
  const plan = text.slice(text.indexOf('Where it fills up'));
  return sum([...plan.matchAll(/(\d+) bags?\b/g)].map(([, count]) => Number(count)));
}
