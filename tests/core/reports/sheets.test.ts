import { describe, expect, it } from 'vitest';
import { type Block, SHEETS, type Sheet, sheetsHtml, sheetText } from '../../../core/reports/index.ts';
import { stockWord } from '../../../core/reports/words.ts';
import { dayInput, everySheet, fixtureBook, fixturePlan, propertyInput, sheetOf } from './fixture.ts';

function made(id: string, book = fixtureBook(), plan = fixturePlan()): Sheet {
  const kind = SHEETS.find((each) => each.id === id)!;
  return sheetOf(kind, book, plan);
}

function flat(blocks: readonly Block[]): readonly Block[] {
  return blocks.flatMap((block) => (block.kind === 'group' || block.kind === 'page' ? flat(block.blocks) : [block]));
}

/** Rows of all tables as plain lines, in order. */
function lines(sheet: Sheet): readonly string[] {
  return flat(sheet.blocks).flatMap((block) =>
    block.kind !== 'table'
      ? []
      : block.rows.map((row) => ('look' in row ? [...row.lead, row.text, ...(row.tail ?? [])] : row).join(' | ')),
  );
}

describe('every sheet of the registry', () => {
  it.each(SHEETS.map((each) => each.id))('%s: has a title, names itself once, says that it is invented', (id) => {
    const sheet = made(id);
    expect(sheet.title).not.toBe('');
    expect(sheet.id.startsWith(id)).toBe(true);
    expect(sheet.invented).toBe(true);
    expect(sheetText(sheet)).toContain('INVENTED DATA, NOT FOR USE');
    expect(sheetsHtml([sheet]).match(/Invented data, not for use/g)?.length).toBeGreaterThanOrEqual(2);
  });

  it('carries the usual cautions where it names a product', () => {
    for (const kind of SHEETS) {
      const sheet = sheetOf(kind);
      const names = /product|Mix|seed/.test(sheetText(sheet));
      const cautions = flat(sheet.blocks).filter((block) => block.kind === 'cautions');
      // What the crew does not take along names the label or local rules in words of its own.
      if (kind.forOffice === true || !['day', 'property'].includes(kind.scope) || kind.id === 'record-history') {
        if (names) expect(sheetText(sheet), kind.id).toMatch(/label|local rules/);
        continue;
      }
      if (sheet.id.startsWith('measure-sheet')) expect(names && cautions.length > 0).toBe(false);
      // Maps name treatments and no product.
      else if (sheet.id.startsWith('map-pages')) expect(sheetText(sheet)).not.toMatch(/product|Mix/);
      else expect(cautions).toHaveLength(1);
      for (const block of cautions) {
        const words = block.kind === 'cautions' ? block.items.join(' ') : '';
        for (const word of [
          'label',
          'Wear',
          'wind',
          'heat',
          'water',
          'steep',
          'people and pets',
          'licensed',
          'local',
        ]) {
          expect(words).toContain(word);
        }
      }
    }
  });

  it('says nothing of invention for a real book', () => {
    const book = { ...fixtureBook(), invented: false };
    const plan = { ...fixturePlan(), invented: false };
    for (const { id } of SHEETS) expect(sheetsHtml([made(id, book, plan)])).not.toContain('Invented data');
  });

  it('has no more cells in a row than the table has columns', () => {
    for (const sheet of everySheet()) {
      for (const block of flat(sheet.blocks)) {
        if (block.kind !== 'table') continue;
        for (const row of block.rows) {
          const cells = 'look' in row ? row.lead.length + 1 + (row.tail?.length ?? 0) : row.length;
          expect(cells).toBeLessThanOrEqual(block.columns.length);
        }
      }
    }
  });

  it('is made from ids alone where the book has lost its records', () => {
    const bare = {
      ...fixtureBook(),
      properties: [],
      machines: [],
      products: [],
      mixes: [],
      treatments: [],
      fillPoints: [],
      rigs: [],
    };
    for (const kind of SHEETS) {
      if (kind.scope !== 'day') continue;
      const text = sheetText(kind.make(dayInput(bare)));
      expect(text).not.toContain('undefined');
      expect(text.length).toBeGreaterThan(200);
    }
  });
});

describe('the run sheet', () => {
  it('has stops, zones and refills in the order of the day', () => {
    const rows = lines(made('run-sheet'));
    const at = (text: string): number => rows.findIndex((row) => row.includes(text));
    const order = [
      'Start: checks and loading',
      '1 | 7:20 am | acre house',
      'front: Overseed | Rider, seeder | 4,000 ft²',
      'Fit Rider, boom',
      'front: Spray one | Rider, boom | 6,000 ft²',
      'Break, 20 min',
      'lawn: Spray one | Rider, boom | 666 ft² | 1',
      'Refill from the rig after 666 ft² of lawn: load 3, 20.0 gal Mix one into Rider, tank',
      'lawn: Spray one, from 666 ft² on | Rider, boom | 6,667 ft² | 3',
      'Refill at Mill hydrant after 7,333 ft² of lawn: load 4',
      'lawn: Spray one, from 7,333 ft² on | Rider, boom | 1,667 ft² | 4',
      '3 | 10:27 am | cedar house',
      'rinse Rider, tank; load 5, 6.0 gal Mix two',
      'lawn: Spray two | Rider, boom | 2,000 ft² | 5',
      'Home: rinse',
    ];
    const places = order.map(at);
    expect(places.map((place, index) => (place < 0 ? order[index] : ''))).toEqual(order.map(() => ''));
    expect([...places].sort((one, other) => one - other)).toEqual(places);
  });

  it('says how to get in and what to mind', () => {
    const rows = lines(made('run-sheet')).join('\n');
    expect(rows).toContain(
      '1 acre Lane · drive 3.1 mi, 10 min · park at 40.00000, -89.41000 · side gate 36 in, locked',
    );
    // Entered are pets; a pond lies in the turf and the gate is locked.
    expect(rows).toContain('Watch for: pets, open water, locked gate. Note: Bell is broken');
    expect(rows).toContain('no room for a trailer');
  });

  it('leaves the treatment out of the rows of a day that has only one', () => {
    const plan = fixturePlan();
    const day = plan.days[0]!;
    const only = { ...plan, days: [{ ...day, stops: day.stops.slice(1, 2) }] };
    expect(lines(made('run-sheet', fixtureBook(), only)).some((row) => row.includes('lawn | Rider, boom'))).toBe(true);
  });
});

/** The fixture's day with these tasks at its first stop and no others. */
function dayOf(areas: readonly (readonly [zoneId: string, treatmentId: string, areaSqFt: number])[]) {
  const plan = fixturePlan();
  const day = plan.days[0]!;
  const stop = day.stops[0]!;
  const tasks = areas.map(([zoneId, treatmentId, areaSqFt]) => ({ ...stop.tasks[0]!, zoneId, treatmentId, areaSqFt }));
  const treatedSqFt = tasks.reduce((sum, each) => sum + each.areaSqFt, 0);
  const ground = { treatedSqFt, coveredSqFt: treatedSqFt, handTrimSqFt: 0, notReachedSqFt: 0 };
  return { ...plan, days: [{ ...day, ...ground, stops: [{ ...stop, tasks }] }] };
}

describe('the ground of a run sheet', () => {
  it('counts each zone once, and says beside it what all treatments come to', () => {
    const plan = dayOf([
      ['back', 'spray', 4000],
      ['back', 'seed', 3000],
      ['front', 'spray', 6000],
    ]);
    const text = sheetText(made('run-sheet', fixtureBook(), plan));
    // 4,000 + 6,000 ft² of ground; 4,000 + 3,000 + 6,000 ft² treated.
    expect(text).toMatch(/Turf +10,000 ft²/);
    expect(text).toMatch(/Ground treated, all treatments +13,000 ft²/);
  });

  it('says it once where no zone has two treatments', () => {
    const plan = dayOf([
      ['back', 'spray', 4000],
      ['front', 'spray', 6000],
    ]);
    const text = sheetText(made('run-sheet', fixtureBook(), plan));
    expect(text).toMatch(/Turf +10,000 ft²/);
    expect(text).not.toContain('all treatments');
    expect(text).not.toContain('Not reached');
  });

  it('tells what is covered, trimmed by hand and not reached', () => {
    const plan = dayOf([['front', 'spray', 6000]]);
    const ground = { treatedSqFt: 5960, coveredSqFt: 6500, handTrimSqFt: 120, notReachedSqFt: 40 };
    const text = sheetText(made('run-sheet', fixtureBook(), { ...plan, days: [{ ...plan.days[0]!, ...ground }] }));
    expect(text).toMatch(/Turf +6,000 ft²/);
    expect(text).toMatch(/Ground treated, all treatments +5,960 ft²/);
    expect(text).toMatch(/Ground covered, overlap included +6,500 ft²/);
    expect(text).toMatch(/Trimmed by hand +120 ft²/);
    expect(text).toMatch(/Not reached, left untreated +40 ft²/);
  });
});

describe('load tickets', () => {
  it('are one per load, with water, products in their own units, and the sum', () => {
    const sheet = made('load-tickets');
    expect(sheet.blocks.filter((block) => block.kind === 'page')).toHaveLength(5);
    const rows = lines(sheet);
    // 20 gal of mix hold 80 fl oz (0.625 gal) of the liquid and 33.3 oz of the powder: 19.375 gal of water.
    expect(rows).toContain('Water |  | 19.4 gal | 19 gal 48 fl oz');
    expect(rows.find((row) => row.startsWith('Wet product'))).toBe('Wet product | 1.2 fl oz/1,000 ft² | 80 fl oz | ');
    expect(rows.find((row) => row.startsWith('Powder product'))).toBe(
      'Powder product | 0.5 oz/1,000 ft² | 33.3 oz | 2 lb 1.3 oz',
    );
    expect(rows).toContain('In the tank when filled |  | 20.0 gal | ');
    // 40 lb out of bags of 15 lb, on 4,000 ft².
    expect(rows.find((row) => row.startsWith('Grass seed'))).toBe(
      'Grass seed | 10 lb/1,000 ft² | 40 lb | 2 bags of 15 lb and 10 lb',
    );
    expect(sheetText(sheet)).toContain('birch house  lawn from 666 ft² on: 6,667 ft²');
  });

  it('begin the order of mixing with the label, dry products before liquid ones', () => {
    const items = flat(made('load-tickets').blocks).flatMap((block) => (block.kind === 'checklist' ? block.items : []));
    expect(items[0]).toMatch(/^Labels first/);
    expect(items[1]).toBe('Half the water, 9.7 gal, agitation on.');
    expect(items[2]).toMatch(/^Powder product, 2 lb 1.3 oz/);
    expect(items[3]).toMatch(/^Wet product, 80 fl oz/);
    expect(items[4]).toContain('keep agitating');
  });

  it('say where to fill', () => {
    const text = sheetText(made('load-tickets'));
    expect(text).toContain('7:00 am, the yard, before leaving');
    expect(text).toContain('the rig, at birch house');
    expect(text).toContain('Mill hydrant');
  });

  it('say what to do with what is left', () => {
    const plan = fixturePlan();
    const day = plan.days[0]!;
    const loads = day.loads.map((load) => (load.number === 5 ? { ...load, leftGal: 1.5 } : load));
    const leftOver = [
      {
        compartmentId: 'rider/tank',
        materialId: 'mix-two',
        volumeGal: 1.5,
        weightLb: 0,
        advice: 'Use it up as labeled.',
      },
    ];
    const text = sheetText(made('load-tickets', fixtureBook(), { ...plan, days: [{ ...day, loads, leftOver }] }));
    expect(text).toContain('1.5 gal is planned to be left. Use it up as labeled.');
    expect(text).toContain('What is left all the same goes onto ground that the label names');
  });

  it('say what goes below the reach of the pump, mixed like the rest', () => {
    const plan = fixturePlan();
    const day = plan.days[0]!;
    const loads = day.loads.map((load) => (load.number === 1 ? { ...load, sumpGal: load.volumeGal / 10 } : load));
    const plain = sheetText(made('load-tickets', fixtureBook(), plan));
    const book = fixtureBook();
    const machines = book.machines.map((machine) => ({
      ...machine,
      compartments: machine.compartments.map((each) => (each.kind === 'tank' ? { ...each, sumpGal: 2 } : each)),
    }));
    const text = sheetText(made('load-tickets', { ...book, machines }, { ...plan, days: [{ ...day, loads }] }));
    expect(plain).not.toContain('below the reach of the pump');
    // 20 gal and 2 gal below the reach of the pump.
    expect(text).toMatch(/Of it below the reach of the pump +2\.0 gal/);
    const water = (sheet: string): number => Number(/Water +([\d.]+) gal/.exec(sheet)?.[1]);
    expect(water(text) / water(plain)).toBeCloseTo(1.1, 2);
  });
});

describe('the truck list', () => {
  it('sums what is carried and holds it against the payload', () => {
    const sheet = made('truck-list');
    expect(lines(sheet)).toContain(' | Together |  | 950.2 lb');
    expect(sheetText(sheet)).toMatch(/To spare +549\.8 lb/);
    expect(
      lines(sheet).some((row) =>
        row.includes('Mill hydrant | 5.0 gal Mix one into Rider, tank | 5.0 gal | birch house'),
      ),
    ).toBe(true);
  });

  it('says so where the truck is too heavy', () => {
    const plan = fixturePlan();
    const heavy = { ...plan, days: [{ ...plan.days[0]!, payloadLb: 900 }] };
    const text = sheetText(made('truck-list', fixtureBook(), heavy));
    expect(text).toMatch(/OVER by +50\.2 lb/);
    expect(text).toContain('Do not drive off like this: 50.2 lb above the payload.');
    expect(text).not.toContain('whole bags');
    expect(sheetText(made('truck-list'))).not.toContain('Do not drive off');
  });

  it('says that whole bags are what is too much, where bags are aboard', () => {
    const plan = fixturePlan();
    const day = plan.days[0]!;
    const bags = { what: 'bags' as const, id: 'grass', label: 'Grass seed', amount: 6, unit: 'bags', weightLb: 90 };
    const heavy = { ...day, carry: [...day.carry, bags], carryWeightLb: 1040.2, payloadLb: 1035 };
    const text = sheetText(made('truck-list', fixtureBook(), { ...plan, days: [heavy] }));
    expect(text).toMatch(/Grass seed +6 bags +90\.0 lb/);
    expect(text).toContain('Do not drive off like this: 5.2 lb above the payload.');
    expect(text).toContain('whole bags');
  });

  it('weighs the bags of a fill point as whole ones, and says what of them is needed', () => {
    const fill = { stock: 'dry' as const, productId: 'grass', volumeGal: 0, weightLb: 86.2, bags: 6 };
    // Six bags of 15 lb.
    expect(stockWord(fixtureBook(), fill)).toBe('6 bags (90.0 lb, 86.2 lb of it needed) Grass seed onto the rig');
    expect(stockWord(fixtureBook(), { ...fill, weightLb: 90 })).toBe('6 bags (90.0 lb) Grass seed onto the rig');
  });
});

describe('the measure sheet', () => {
  it('lists zones, what is left out and gates, with the sum', () => {
    const rows = lines(made('measure-sheet'));
    expect(rows.some((row) => row.startsWith('back | outline'))).toBe(true);
    expect(rows.some((row) => row.startsWith('All zones'))).toBe(true);
    // 0.00005 degrees of longitude and latitude at 40 degrees north are 14.0 ft by 18.2 ft
    expect(rows).toContain('pond | water | 255 ft² | none');
    expect(rows).toContain('side gate | 36 in | locked | back');
  });

  it('tells a stated area from a drawn one', () => {
    const kind = SHEETS.find((each) => each.id === 'measure-sheet')!;
    if (kind.scope !== 'property') throw new Error('a measure sheet is about a property');
    expect(lines(kind.make(propertyInput('cedar'))).some((row) => row.startsWith('bank | stated: old card'))).toBe(
      true,
    );
  });

  it('shows metric figures where the book asks for them', () => {
    const book = { ...fixtureBook(), units: 'metric' as const };
    const sheet = made('measure-sheet', book);
    expect(lines(sheet)).toContain('side gate | 91 cm | locked | back');
    expect(sheetsHtml([sheet])).toMatch(/>\d+ m</);
  });
});
