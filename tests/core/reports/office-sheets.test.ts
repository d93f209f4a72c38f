import { describe, expect, test } from 'vitest';
import type { Book, Calibration } from '../../../core/book/index.ts';
import { compareFleets, fleetResult } from '../../../core/compare/index.ts';
import type { Plan } from '../../../core/plan/result/index.ts';
import { type Block, SHEETS, type Sheet } from '../../../core/reports/index.ts';
import { buyingList, roundCost, usesOfPlan, waterByFillPoint } from '../../../core/round/buying/index.ts';
import {
  formatArea,
  formatDuration,
  formatMoney,
  formatProductAmount,
  formatVolume,
} from '../../../core/units/index.ts';
import { SAMPLE_NAMES, type SampleName, sampleBook } from '../../support/samples.ts';
import { storedPlan } from '../../support/stored-plans.ts';
import { fixtureBook, ledgerOf } from './fixture.ts';

/** The smallest sample that has both sprayed and spread work, as it was planned once. */
const SAMPLE = sampleBook('mixed-day');
const PLAN = storedPlan('mixed-day');

function roundSheet(
  id: string,
  book: Book,
  plan: Plan | null,
  fleetPlans: readonly { fleetId: string; plan: Plan }[] = [],
): Sheet {
  const kind = SHEETS.find((each) => each.id === id);
  const [round] = book.rounds;
  if (kind?.scope !== 'round' || round === undefined) throw new Error('no sheet of a round');
  return kind.make({ scope: 'round', book, round, plan, fleetPlans });
}

const flat = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => (block.kind === 'group' || block.kind === 'page' ? flat(block.blocks) : [block]));
const factsOf = (sheet: Sheet): Readonly<Record<string, string>> =>
  Object.fromEntries(
    flat(sheet.blocks).flatMap((block) =>
      block.kind === 'facts' ? block.facts.map((each) => [each.label, each.value]) : [],
    ),
  );

/** All words of a sheet, a row of a table on one line. */
function wordsOf(sheet: Sheet): string {
  return flat(sheet.blocks)
    .flatMap((block): readonly string[] => {
      if (block.kind === 'blanks') return block.labels;
      if (block.kind === 'table')
        return block.rows.map((row) => ('look' in row ? [...row.lead, row.text, ...(row.tail ?? [])] : row).join(' '));
      if (block.kind === 'facts') return block.facts.map((each) => `${each.label} ${each.value}`);
      if (block.kind === 'cautions') return block.items;
      return 'text' in block ? [block.text] : [];
    })
    .join('\n');
}

describe('the summary of a round', () => {
  const { book, plan } = { book: SAMPLE, plan: PLAN };

  test('has the totals of the plan', () => {
    const facts = factsOf(roundSheet('round-summary', book, plan));
    const paid = plan.days.reduce((sum, day) => sum + day.paidSec, 0);
    const treated = plan.days.reduce((sum, day) => sum + day.treatedSqFt, 0);
    expect(facts).toMatchObject({
      'Rig days': String(plan.days.length),
      'Paid time': formatDuration(paid),
      'Ground treated': formatArea(treated),
      Loads: String(plan.days.reduce((sum, day) => sum + day.loads.length, 0)),
      'Cost with product': formatMoney(roundCost(book, plan).totalCents / 100),
    });
  });

  test('orders what the loads of its days take', () => {
    const text = wordsOf(roundSheet('round-summary', book, plan));
    const list = buyingList(book, usesOfPlan(book, plan), '');
    expect(list.lines.length).toBeGreaterThan(0);
    for (const line of list.lines) {
      const unit = book.products.find((each) => each.id === line.productId)?.unit ?? 'lb';
      expect(text).toContain(formatProductAmount(line.need, unit));
      expect(text).toContain(formatProductAmount(line.buy, unit));
    }
    expect(text).toContain(formatMoney(list.costUsd));
    for (const { morningGal } of waterByFillPoint(book, plan))
      if (morningGal > 0) expect(text).toContain(formatVolume(morningGal));
  });
});

/** Samples whose whole plan was stored. */
const STORED: readonly SampleName[] = ['residential-day', 'mixed-day'];

test.each(STORED)('the sheets of the office of %s stay as they were', (name) => {
  const [book, plan] = [sampleBook(name), storedPlan(name)];
  expect(wordsOf(roundSheet('round-summary', book, plan))).toMatchSnapshot();
  const [day] = plan.days;
  if (day === undefined) throw new Error('no day');
  const one = { ...day, stops: day.stops.slice(0, 1) };
  for (const kind of SHEETS) {
    if (kind.scope !== 'day' || kind.forOffice !== true) continue;
    expect(
      wordsOf(kind.make({ scope: 'day', book, plan: { ...plan, days: [one] }, day: one })),
      kind.id,
    ).toMatchSnapshot();
  }
});

test('the summary of a round without a plan says that it has none', () => {
  expect(wordsOf(roundSheet('round-summary', sampleBook('residential-day'), null))).toContain('has no plan yet');
});

describe('the comparison of fleets', () => {
  const { book, plan } = { book: SAMPLE, plan: PLAN };
  const [rig] = book.rigs;
  const fleets = [
    { id: 'now', name: 'As it is', rigIds: [rig?.id ?? ''], fixedPerSeason: 0, note: '' },
    { id: 'more', name: 'With more', rigIds: [rig?.id ?? ''], fixedPerSeason: 1200, note: '' },
  ];
  const other: Plan = { ...plan, days: plan.days.slice(0, 1), totals: { ...plan.totals, costUsd: 123.45, refills: 1 } };
  const fleetPlans = [
    { fleetId: 'now', plan },
    { fleetId: 'more', plan: other },
  ];

  test('has the figures of both and their difference', () => {
    const text = wordsOf(roundSheet('fleet-comparison', { ...book, fleets }, plan, fleetPlans));
    const { differences } = compareFleets(fleetResult(fleets[0]!, plan), fleetResult(fleets[1]!, other), 1);
    const cost = differences.find((each) => each.what === 'cost');
    expect(cost?.second).toBe(123.45);
    expect(text).toContain(formatMoney(plan.totals.costUsd));
    expect(text).toMatch(/cost without product .*\$123\.45/);
    expect(text).toContain(`${formatMoney(Math.abs(cost?.more ?? 0))} less`);
    expect(text).toMatch(/fixed cost a season +\$0\.00 +\$1,200\.00 +\$1,200\.00 more/);
  });

  test('without two plans says what to do', () => {
    for (const has of [[], fleetPlans.slice(0, 1), [{ fleetId: 'gone', plan }]])
      expect(wordsOf(roundSheet('fleet-comparison', { ...book, fleets }, plan, has))).toContain(
        'no two fleets with a plan',
      );
  });
});

describe('the ledger of a season', () => {
  const kind = SHEETS.find((each) => each.id === 'season-ledger');
  const made = (book: Book): string =>
    kind?.scope === 'year' ? wordsOf(kind.make({ scope: 'year', book, ledger: ledgerOf(book) })) : '';

  test.each(SAMPLE_NAMES)('of %s has the totals of the ledger, and every lawn that has a limit', (name) => {
    const book = sampleBook(name);
    const ledger = ledgerOf(book);
    const text = made(book);
    expect(ledger.total.products.size).toBeGreaterThan(0);
    for (const [id, amount] of ledger.total.products) {
      const product = book.products.find((each) => each.id === id);
      expect(text).toContain(formatProductAmount(amount, product?.unit ?? 'lb'));
    }
    for (const lawn of ledger.lawns) if (lawn.worst.length > 0) expect(text).toContain(lawn.name);
  });

  test('says OVER beyond a limit, and never rounds up to it', () => {
    const book = sampleBook('residential-day');
    const withMost = (mostPerYear: number): string =>
      made({ ...book, products: book.products.map((each) => ({ ...each, label: { ...each.label, mostPerYear } })) });
    // The spring mix puts 0.45 fl oz on 1,000 ft2.
    expect(withMost(0.45)).toMatch(/a year .* 100 %$/m);
    expect(withMost(0.4500001)).toMatch(/a year .* 99 %$/m);
    expect(withMost(0.449)).toMatch(/a year .* 100\.3 % OVER$/m);
  });
});

describe('the record of calibrations', () => {
  const kind = SHEETS.find((each) => each.id === 'calibration-record');
  const made = (book: Book): string => (kind?.scope === 'book' ? wordsOf(kind.make({ scope: 'book', book })) : '');
  const calibration = (on: string, gpa: number): Calibration => ({
    id: on,
    on,
    by: 'Kim Example',
    what: 'boom',
    given: [{ name: 'spacing-in', text: '20 in' }],
    found: [{ name: 'gpa', value: gpa, unit: 'gal/acre' }],
    source: 'invented source',
    setting: '30 psi',
  });

  test('has every one, newest first, with what it was found from and when the next is due', () => {
    const base = fixtureBook();
    const machines = base.machines.map((machine) => ({
      ...machine,
      heads: machine.heads.map((head) =>
        head.id === 'boom'
          ? {
              ...head,
              deliveredGalPer1000SqFt: 0.34,
              dueAfterUses: 10,
              usesSince: 12,
              calibrations: [calibration('2027-02-01', 14.85), calibration('2027-03-01', 15.25)],
            }
          : head,
      ),
    }));
    const text = made({ ...base, machines });
    expect(text).toContain('Rider, boom');
    expect(text.indexOf('Mar 1, 2027')).toBeGreaterThan(0);
    expect(text.indexOf('Mar 1, 2027')).toBeLessThan(text.indexOf('Feb 1, 2027'));
    for (const part of [
      '15.25 gal/acre',
      '14.85 gal/acre',
      '30 psi',
      'Kim Example',
      '20 in',
      'invented source',
      'DUE NOW',
    ])
      expect(text).toContain(part);
    expect(text).toContain('0.34 gal/1,000 ft²');
  });

  test('without any says where they are made', () => {
    expect(made(fixtureBook())).toContain('No calibration is kept');
  });
});
