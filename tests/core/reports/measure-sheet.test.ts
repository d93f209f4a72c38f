import { describe, expect, it } from 'vitest';
import type { Book, Property, Zone } from '../../../core/book/index.ts';
import { lastChange, measureProperty, treatableGround } from '../../../core/measure/index.ts';
import { passPicture } from '../../../core/passes/index.ts';
import { lawnQuote } from '../../../core/quote/index.ts';
import { type PropertyInput, SHEETS, type Sheet, sheetsHtml, sheetText } from '../../../core/reports/index.ts';
import { fixtureBook } from './fixture.ts';

function sheet(of: Book, propertyId: string, more: Partial<PropertyInput> = {}): Sheet {
  const kind = SHEETS.find((each) => each.id === 'measure-sheet');
  const property = of.properties.find((each) => each.id === propertyId);
  if (kind?.scope !== 'property' || property === undefined) throw new Error('no such sheet or lawn');
  const measure = measureProperty(property);
  const quote = lawnQuote(of, property, measure);
  return kind.make({
    scope: 'property',
    book: of,
    property,
    measure,
    change: lastChange(property, measure),
    quote,
    ...more,
  });
}

const text = (...given: Parameters<typeof sheet>): string => sheetText(sheet(...given)).replace(/\s+/g, ' ');

function changed(propertyId: string, change: (property: Property) => Property): Book {
  const book = fixtureBook();
  return { ...book, properties: book.properties.map((each) => (each.id === propertyId ? change(each) : each)) };
}

const withZone = (property: Property, zoneId: string, more: Partial<Zone>): Property => ({
  ...property,
  zones: property.zones.map((zone) => (zone.id === zoneId ? { ...zone, ...more } : zone)),
});

describe('the ground on the measure sheet', () => {
  it('has the passes of a head on its plan, with what they come to, where they are given', () => {
    const birch = fixtureBook().properties.find((each) => each.id === 'birch')!;
    const outline = treatableGround(birch, birch.zones[0]!.id);
    const head = { swathFt: 8, overlapFt: 1, trimPasses: 1, turnSec: 4, speedMph: 4 };
    const picture = passPicture(outline, head, {}, 0, 'birch');
    if (!picture.ok || picture.value === null) throw new Error('no passes');
    const passes = { by: 'Rider, boom', pictures: [picture.value] };
    const html = sheetsHtml([sheet(fixtureBook(), 'birch', { passes })]);
    expect(html.split('<path class="pass-swath"')).toHaveLength(picture.value.swathCount + 1);
    expect(html.split('<path class="pass-trim"')).toHaveLength(picture.value.trimCount + 1);
    expect(html).toContain('<path class="pass-missed"');
    expect(text(fixtureBook(), 'birch', { passes })).toContain(
      `passes of Rider, boom, ${picture.value.trimCount} trim passes (thick) and ${picture.value.swathCount} swaths`,
    );
    expect(sheetsHtml([sheet(fixtureBook(), 'birch')])).not.toContain('<path class="pass-swath"');
  });

  it('shows the likely error of each zone and of the total, and how the outline was drawn', () => {
    const drawn = changed('birch', (property) => {
      const shape = property.zones[0]?.shape;
      if (shape?.kind !== 'drawn') throw new Error('drawn it is');
      return withZone(property, 'lawn', { shape: { ...shape, outlineErrorFt: 1, drawnOver: 'aerial picture' } });
    });
    // 0.0003 degrees: 84.1 ft by 109.3 ft, 387 ft round
    expect(text(drawn, 'birch')).toMatch(/Treatable turf 9,1\d\d ± 387 ft²/);
    expect(text(drawn, 'birch')).toMatch(
      /lawn outline over aerial picture 9,1\d\d ft² not measured 9,1\d\d ft² 387 ft²/,
    );
    expect(text(fixtureBook(), 'birch')).toContain('not known');
  });

  it('holds the total against the earlier one', () => {
    const before = changed('cedar', (property) => ({
      ...withZone(property, 'lawn', { shape: { kind: 'stated', areaSqFt: 12_450, method: '' } }),
      pastMeasures: [{ on: '2025-03-02', treatableSqFt: 12_400, errorSqFt: 500, how: '' }],
    }));
    // 12,450 + 500 of the bank against 12,400
    expect(text(before, 'cedar')).toContain(
      'Before: 12,400 ± 500 ft² on 2025-03-02; now +4.4 %, more than the likely error as far as it is known',
    );
  });

  it('shows the arithmetic of field work and how a slope was found', () => {
    const worked = changed('cedar', (property) =>
      withZone(property, 'bank', {
        shape: {
          kind: 'stated',
          areaSqFt: 1500,
          method: '',
          working: {
            kind: 'shapes',
            shapes: [{ kind: 'rectangle', lengthFt: 50, widthFt: 30, take: 'add', note: '' }],
          },
        },
        slopeDeg: 15,
        slopeWorking: { kind: 'level', degrees: 15 },
      }),
    );
    expect(text(worked, 'cedar')).toContain('bank: rectangle: 50 × 30 = 1,500 ft²');
    expect(text(worked, 'cedar')).toContain('bank plain shapes (1) 15°, level 1,500 ft²');
  });

  it('says where the parking point was placed by an address range', () => {
    const placed = changed('birch', (property) => ({ ...property, placedBy: 'address-range' }));
    expect(text(placed, 'birch')).toContain('placed by address range; check it on site');
    expect(text(placed, 'birch', { reader: 'customer' })).not.toContain('address range');
  });

  it('draws the lot, and the names of zones where there are several', () => {
    const [parcel] = fixtureBook().properties.flatMap((each) =>
      each.zones.flatMap((zone) => (zone.shape.kind === 'drawn' ? [zone.shape.geometry] : [])),
    );
    const lot = changed('acre', (property) => ({ ...property, ...(parcel === undefined ? {} : { parcel }) }));
    const html = sheetsHtml([sheet(lot, 'acre')]);
    expect(html).toContain('class="parcel"');
    expect(html).toMatch(/<text class="name"[^>]*>front</);
    expect(sheetsHtml([sheet(fixtureBook(), 'birch')])).not.toContain('<text class="name"');
  });
});

describe('the quote on the measure sheet', () => {
  const priced: Book = {
    ...fixtureBook(),
    prices: { ...fixtureBook().prices, wagePerHour: 30, perMile: 0.5 },
    estimate: {
      steps: [{ upToSqFt: null, dollarsPer1000SqFt: 8 }],
      leastPerVisit: 40,
      roundsPerSeason: 4,
      overheadShare: 0.1,
      carrierDollarsPerGal: 0,
      milesPerVisit: 3,
      drivingMinPerVisit: 5,
    },
  };

  it('tells the office who can do it and why, what it takes, costs and brings', () => {
    const words = text(priced, 'acre');
    expect(words).toContain('Who can do it: Spray one');
    expect(words).toMatch(/back Rider, boom yes, quickest [\d.]+ min gate 36 in, machine 35 in/);
    expect(words).toMatch(/Work .* treating \+ .* driving = .* min × \$30\.00 per hour/);
    expect(words).toContain('Miles 3 mi × $0.50');
    expect(words).toContain('Season, 4 visits');
    expect(words).toMatch(/Margin [\d.]+ % of the price of a visit/);
    expect(words).toMatch(/Price per visit: .* at \$8\.00 per 1,000 ft²/);
  });

  it('keeps machines, minutes, cost and margin from the customer, but not the price', () => {
    const words = text(priced, 'acre', { reader: 'customer' });
    expect(words).toMatch(/Price per visit \$\d+\.\d\d/);
    expect(words).toContain('Treatments Overseed, Spray one, Spray two');
    for (const secret of ['Margin', 'Cost', 'Rider', 'per hour', 'Overhead', 'Miles'])
      expect(words).not.toContain(secret);
  });

  it('says of each line what was not entered', () => {
    expect(text({ ...priced, prices: { ...priced.prices, wagePerHour: 0 } }, 'acre')).toContain('no wage entered');
  });

  it('has no price where the book has none, and carries the cautions because it names products', () => {
    const words = text(fixtureBook(), 'acre');
    expect(words).not.toContain('Price per visit');
    expect(words).toContain('Neither wage nor miles nor prices are entered');
    for (const reader of ['office', 'customer'] as const) {
      expect(sheet(priced, 'acre', { reader }).blocks.filter((each) => each.kind === 'cautions')).toHaveLength(1);
    }
  });
});
