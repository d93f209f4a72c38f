import { describe, expect, test } from 'vitest';
import type { Book } from '../../../core/book/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { SHEETS, type Sheet, sheetsHtml, sheetText } from '../../../core/reports/index.ts';
import { everySheet, fixtureBook, fixturePlan, sheetOf } from './fixture.ts';

const DAY_SHEETS = SHEETS.filter((each) => each.scope === 'day');

function daySheets(book: Book = fixtureBook(), plan: Plan = fixturePlan()): readonly Sheet[] {
  return DAY_SHEETS.map((kind) => sheetOf(kind, book, plan));
}

function made(id: string, book?: Book, plan?: Plan): string {
  const kind = SHEETS.find((each) => each.id === id);
  if (kind === undefined) throw new Error(`no sheet ${id}`);
  return sheetText(sheetOf(kind, book, plan)).replace(/\s+/g, ' ');
}

/** The fixture's plan with another day in it. */
function planWith(change: (day: Plan['days'][number]) => Partial<Plan['days'][number]>): Plan {
  const plan = fixturePlan();
  return { ...plan, days: plan.days.map((day) => ({ ...day, ...change(day) })) };
}

describe('sheets of odd books stay whole', () => {
  test('an address of 300 letters stands on the run sheet to its last word', () => {
    const address = `${'Longmeadow '.repeat(28)}end of it`;
    const book = fixtureBook();
    const long = { ...book, properties: book.properties.map((each) => ({ ...each, address })) };
    expect(address.length).toBeGreaterThan(300);
    expect(made('run-sheet', long)).toContain(address);
  });

  test('names from right to left are set apart, so that times and figures beside them keep their order', () => {
    const name = 'רחוב הגפן';
    const sheets = everySheet(fixtureBook((text) => `${text} ${name} 12`));
    const html = sheetsHtml(sheets);
    expect(html).toContain(`<bdi>${name}</bdi> 12 · until`);
    expect(html).not.toMatch(/<bdi>[^<]*\d[^<]*<\/bdi>/);
    expect(sheetText(sheets[0] ?? { id: '', title: '', subtitle: '', invented: false, blocks: [] })).toContain(name);
  });

  test('emoji and combining marks come through as they are', () => {
    const name = '🌱👩‍🌾 é̂';
    for (const sheet of daySheets(fixtureBook((text) => `${text} ${name}`)))
      expect(sheetsHtml([sheet])).toContain(name);
  });

  test('markup in a name is text in every sheet and in the heads of pages', () => {
    const name = '<b onclick="x()">&"\'</b></style><script>';
    const html = sheetsHtml(everySheet(fixtureBook((text) => `${text}${name}`)));
    expect(html).not.toMatch(/<b |<script|onclick="/);
    expect(html.match(/<\/style>/g)).toHaveLength(2);
  });

  test('a day without stops says so, on every sheet', () => {
    const empty = planWith(() => ({
      stops: [],
      loads: [],
      activities: [],
      levels: [],
      carry: [],
      leftOver: [],
      carryWeightLb: 0,
    }));
    expect(made('run-sheet', fixtureBook(), empty)).toContain('No stop is planned for this day.');
    expect(made('load-tickets', fixtureBook(), empty)).toContain('Nothing is filled on this day.');
    expect(made('truck-list', fixtureBook(), empty)).toContain('The plan lists nothing to carry.');
    for (const sheet of daySheets(fixtureBook(), empty)) {
      expect(sheetText(sheet)).not.toMatch(/undefined|NaN|Infinity/);
    }
  });

  test('a product without a label, and one that the book has lost, are named as such on the ticket', () => {
    const tickets = made('load-tickets');
    expect(tickets).toContain('Powder product no registration entered; no limits entered: read the label itself');
    const lost = { ...fixtureBook(), products: fixtureBook().products.filter((each) => each.id !== 'powder') };
    expect(made('load-tickets', lost)).toContain('powder not in the book: read the label itself');
  });

  test('what a label says as it was entered stands on the ticket', () => {
    const book = fixtureBook();
    const label = {
      ...book.products[0]?.label,
      registration: 'invented 1-2',
      mostPerApplication: 1.5,
      leastCarrierGalPer1000SqFt: 0.25,
      mostWindMph: 10,
      leastAirF: 40,
      mostAirF: 85,
      dryHours: 6,
      needsAgitation: true,
      note: 'invented, not for use',
    };
    const labelled = {
      ...book,
      products: book.products.map((each) => (each.id === 'wet' ? { ...each, label } : each)),
    };
    expect(made('load-tickets', labelled)).toContain(
      'Wet product registration invented 1-2; at most 1.5 fl oz/1,000 ft²; carrier 0.25 gal/1,000 ft² or more; wind up to 10.0 mph; air 40 °F to 85 °F; 6 h without rain after it; invented, not for use',
    );
  });

  test('without actuals there is room for them: at every stop, zone and load', () => {
    const text = made('run-sheet');
    expect(text.match(/in ______ out ______/g)).toHaveLength(3);
    expect(text).toMatch(/Load +Actual/);
    expect(made('load-tickets').match(/Actually put in: ________/g)).toHaveLength(5);
  });

  test('without an address or a calibration that is said', () => {
    const book = fixtureBook();
    const bare = { ...book, properties: book.properties.map((each) => ({ ...each, address: '' })) };
    expect(made('run-sheet', bare)).toContain('no address entered');
    expect(made('load-tickets')).toContain(
      'Calibration no calibration kept in the book: check it before the first load',
    );
  });

  test('the last calibration up to the day stands on the ticket: tip, pressure, speed, spacing', () => {
    const book = fixtureBook();
    const calibration = (id: string, on: string, psi: string) => ({
      id,
      on,
      by: '',
      what: 'tip',
      given: [
        { name: 'size', text: '04' },
        { name: 'psi', text: psi },
        { name: 'spacing-in', text: '20' },
      ],
      found: [{ name: 'mph', value: 4, unit: 'mph' }],
      source: '',
      setting: 'gear 2',
    });
    // The day of the fixture is April 1, 2031.
    const calibrations = [
      calibration('b', '2031-03-20', '40'),
      calibration('a', '2030-04-02', '30'),
      calibration('c', '2031-05-01', '50'),
    ];
    const machines = book.machines.map((machine) => ({
      ...machine,
      heads: machine.heads.map((head) => ({ ...head, deliveredGalPer1000SqFt: 0.31, calibrations })),
    }));
    const tickets = made('load-tickets', { ...book, machines } as Book);
    expect(tickets).toContain('Put out with Rider, boom: 4.0 mph, 8.0 ft swath, delivers 0.31 gal/1,000 ft²');
    expect(tickets).toContain(
      'Calibration tip 04, 40 psi, 4.0 mph, tips 20 in apart, gear 2, calibrated Thursday, March 20, 2031',
    );
  });

  test('agitation that is needed and not there is said', () => {
    const book = fixtureBook();
    expect(made('load-tickets', book)).toContain('Agitation needed: on from half the water until the tank is empty');
    const machines = book.machines.map((machine) => ({
      ...machine,
      compartments: machine.compartments.map((each) => (each.kind === 'tank' ? { ...each, agitated: false } : each)),
    }));
    expect(made('load-tickets', { ...book, machines })).toContain('needed, but none is entered for this tank');
  });
});
