import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Issue } from '../../core/base/index.ts';
import { readBook } from '../../core/book/index.ts';
import { checkBook } from '../../core/checks/index.ts';
import { buildProblem } from '../../core/plan/problem/index.ts';
import { placedTasks, unplacedTasks, type WholeRun, wholeRun } from './whole-run.ts';

/** A book with one thing wrong in it goes all the way: the fault is named, and every other lawn is planned as before. */

type Json = { [member: string]: Json } & Json[] & (string | number);
type Change = (book: Json) => void;

const SAMPLE = readFileSync(new URL('../../sample-routes/residential-day.json', import.meta.url), 'utf8');
const KEPT = ['teasel-lane-2', 'teasel-lane-4', 'teasel-lane-6', 'teasel-lane-8', 'teasel-lane-1', 'teasel-lane-3'];
/** The lawn that the tests break: a front and a back, both within reach. */
const BAD = 'teasel-lane-4';

/** Six lawns of the invented residential day, whose hand trim is stated and not planned, with one change. */
function text(change: Change = () => {}): string {
  const book = JSON.parse(SAMPLE) as Json;
  (book as Record<string, unknown>).properties = KEPT.map((id) =>
    (book.properties as Json[]).find((each) => String(each.id) === id),
  );
  for (const machine of book.machines as Json[])
    for (const head of machine.heads as Json[]) Object.assign(head.passes as object, { handTrimFromSqFt: 1000 });
  change(book);
  return JSON.stringify(book, null, 1);
}

function property(book: Json, id: string): Json {
  const found = (book.properties as Json[]).find((each) => String(each.id) === id);
  if (found === undefined) throw new Error(`no property ${id}`);
  return found;
}

const zone = (book: Json, index = 0): Record<string, unknown> =>
  property(book, BAD).zones?.[index] as unknown as Record<string, unknown>;

function ringOf(book: Json): [number, number][] {
  const { geometry } = zone(book).shape as { geometry: { coordinates: [number, number][][] } };
  return geometry.coordinates[0] ?? [];
}

/** Gives the front zone another outline. */
const redraw =
  (draw: (ring: [number, number][]) => [number, number][]): Change =>
  (book) => {
    zone(book).shape = { kind: 'drawn', geometry: { type: 'Polygon', coordinates: [draw(ringOf(book))] } };
  };

const good = wholeRun(text());
const HINT_LENGTH = 20;

function others(tasks: readonly string[]): readonly string[] {
  return tasks.filter((each) => !each.startsWith(`${BAD} `));
}

function expectNothingElseLost(run: WholeRun): void {
  expect(run.verdict.violations).toEqual([]);
  expect(others(placedTasks(run.plan))).toEqual(others(placedTasks(good.plan)));
}

function found(issues: readonly Issue[], code: string): Issue {
  const issue = issues.find((each) => each.code === code);
  expect(issue, `${code} in ${issues.map((each) => each.code).join(', ')}`).toBeDefined();
  return issue as Issue;
}

test('the six lawns without a fault are all planned, and nothing is complained about', () => {
  expect(good.checks).toEqual([]);
  expect(good.measures.flatMap((each) => each.issues)).toEqual([]);
  expect(good.verdict.violations).toEqual([]);
  expect(placedTasks(good.plan)).toHaveLength(12);
  expect(unplacedTasks(good.plan)).toEqual([]);
});

describe('a text that is no book is refused, with file, place and remedy', () => {
  const cut = text().slice(0, 4000);
  test.each<readonly [string, string, string, RegExp, RegExp]>([
    ['not JSON', '{ "format": swardway }', 'not-json', /^round\.json, line 1, column 13$/, /backup/],
    ['JSON cut off', cut, 'not-json', /^round\.json, line \d+, column \d+$/, /backup/],
    ['an empty file', '', 'not-json', /^round\.json$/, /backup/],
    ['another format', '{"type":"FeatureCollection","features":[]}', 'not-a-book', /^round\.json$/, /imported/],
    ['a newer version', text((book) => Object.assign(book, { version: 2 })), 'newer-version', /^round\.json$/, /newer/],
    [
      'a text for a number',
      text((book) => Object.assign(zone(book), { slopeDeg: '5 deg' })),
      'wrong-schema',
      /^round\.json, properties\[1\]\.zones\[0\]\.slopeDeg$/,
      /without quotation marks/,
    ],
    [
      'a member missing',
      text((book) => delete (property(book, BAD) as Record<string, unknown>).parking),
      'wrong-schema',
      /^round\.json, properties\[1\]\.parking$/,
      /missing member/,
    ],
    [
      'a negative area',
      text((book) => Object.assign(zone(book), { shape: { kind: 'stated', areaSqFt: -4000 } })),
      'wrong-schema',
      /^round\.json, properties\[1\]\.zones\[0\]\.shape\.areaSqFt$/,
      /book\.schema\.json/,
    ],
    [
      'a negative rate',
      text((book) => Object.assign(book.mixes?.[0] as object, { carrierGalPer1000SqFt: -0.5 })),
      'wrong-schema',
      /^round\.json, mixes\[0\]\.carrierGalPer1000SqFt$/,
      /book\.schema\.json/,
    ],
    [
      'a slope steeper than a wall',
      text((book) => Object.assign(zone(book), { slopeDeg: 200 })),
      'wrong-schema',
      /^round\.json, properties\[1\]\.zones\[0\]\.slopeDeg$/,
      /book\.schema\.json/,
    ],
    [
      'projected coordinates',
      text(redraw((ring) => ring.map(([east, north]) => [760_000 + east, 2_950_000 + north]))),
      'wrong-schema',
      /^round\.json, properties\[1\]\.zones\[0\]\.shape\.geometry\.coordinates\[0\]\[0\]\[0\]$/,
      /projected coordinates.*longitude, latitude in degrees/,
    ],
    [
      'a parking point with latitude first, west of 90',
      text((book) => Object.assign(property(book, BAD), { parking: [40.04, -104.9] })),
      'wrong-schema',
      /^round\.json, properties\[1\]\.parking\[1\]$/,
      /exchanged/,
    ],
  ])('%s', (_name, bad, code, where, hint) => {
    const read = readBook(bad, 'round.json');
    if (read.ok) throw new Error('it was read');
    expect(read.error.code).toBe(code);
    expect(read.error.where).toMatch(where);
    expect(read.error.detail).not.toBe('');
    expect(read.error.hint).toMatch(hint);
  });

  test('the record is named, since nobody counts to properties[1]', () => {
    const read = readBook(
      text((book) => Object.assign(zone(book), { slopeDeg: -1 })),
      'round.json',
    );
    expect(!read.ok && read.error.detail).toContain('"teasel-lane-4" / "front"');
  });
});

describe('an outline that cannot be used keeps its zone out of the plan, and nothing else', () => {
  const middle = (ring: [number, number][]): [number, number] => [
    ((ring[0]?.[0] ?? 0) + (ring[2]?.[0] ?? 0)) / 2,
    ((ring[0]?.[1] ?? 0) + (ring[2]?.[1] ?? 0)) / 2,
  ];
  test.each<readonly [string, Change, string, RegExp]>([
    [
      'self-crossing',
      redraw((ring) => [ring[0]!, ring[2]!, ring[1]!, ring[3]!, ring[0]!]),
      'geometry-self-crossing',
      /move the corner|repair/,
    ],
    [
      'zero-width',
      redraw((ring) => [ring[0]!, middle(ring), ring[2]!, middle(ring), ring[0]!]),
      'geometry-zero-width',
      /round the turf/,
    ],
    ['one corner only', redraw((ring) => [ring[0]!, ring[0]!, ring[0]!]), 'geometry-too-few-corners', /at least three/],
    ['no corners', redraw(() => []), 'geometry-invalid', /Draw the outline again/],
    [
      'latitude first',
      redraw((ring) => ring.map(([east, north]) => [north, east])),
      'geometry-not-lonlat',
      /swapped.*longitude first/,
    ],
    [
      'as large as a county',
      redraw((ring) => ring.map(([east, north], index) => (index === 2 ? [east + 0.4, north] : [east, north]))),
      'geometry-too-large',
      /10 km/,
    ],
  ])('%s', (_name, change, code, remedy) => {
    const run = wholeRun(text(change));
    const measure = run.measures.find((each) => each.propertyId === BAD);
    const issue = found(measure?.issues ?? [], code);
    expect(issue.severity).toBe('error');
    expect(issue.where).toMatch(/4 Teasel Lane|teasel-lane-4/);
    expect(issue.where).toMatch(/front/);
    expect(issue.message).toMatch(remedy);
    // The plan says so as well: among its issues, and as work left undone with a reason.
    expect(run.plan.issues).toContainEqual(issue);
    expect(unplacedTasks(run.plan)).toEqual([`${BAD} front pre-emergent 0`]);
    expect(run.plan.unplaced[0]?.reasons[0]).toMatchObject({ rigId: 'rig-north', code: 'zone-not-measured' });
    expect(placedTasks(run.plan)).toContain(`${BAD} back pre-emergent 0`);
    expectNothingElseLost(run);
  });
});

describe('an outline that is odd but clear is planned, with a word about it', () => {
  test('unclosed: closed with a straight side, to the same area', () => {
    const run = wholeRun(text(redraw((ring) => ring.slice(0, -1))));
    const measure = run.measures.find((each) => each.propertyId === BAD);
    const issue = found(measure?.issues ?? [], 'geometry-not-closed');
    expect(issue.message).toMatch(/closed with a straight side. Check that side/);
    // The gap is a whole side of the lawn.
    expect(issue.severity).toBe('warning');
    expect(measure?.treatableSqFt).toBeCloseTo(
      good.measures.find((each) => each.propertyId === BAD)?.treatableSqFt ?? Number.NaN,
      6,
    );
    expect(placedTasks(run.plan)).toEqual(placedTasks(good.plan));
  });

  test('the same outline twice in one property: counted once', () => {
    const run = wholeRun(
      text((book) => {
        (property(book, BAD).zones as Json[]).push({ ...zone(book), id: 'front-again' } as unknown as Json);
      }),
    );
    const measure = run.measures.find((each) => each.propertyId === BAD);
    expect(found(measure?.issues ?? [], 'zone-without-turf').message).toMatch(/remove the zone/);
    expect(measure?.treatableSqFt).toBeCloseTo(
      good.measures.find((each) => each.propertyId === BAD)?.treatableSqFt ?? Number.NaN,
      3,
    );
    expectNothingElseLost(run);
  });

  test('the same outline at two properties: both named', () => {
    const run = wholeRun(
      text((book) => {
        const copy = { ...(property(book, BAD) as object), id: 'copy', name: 'Copy' };
        (book.properties as Json[]).push(copy as unknown as Json);
      }),
    );
    const issue = found(run.checks, 'duplicate-outline');
    expect(`${issue.where} ${issue.message}`).toMatch(/Copy.*4 Teasel Lane.*remove one/);
    expectNothingElseLost({ ...run, plan: withoutProperty(run, 'copy') });
  });

  test('an outline far from where the rig parks', () => {
    const run = wholeRun(text(redraw((ring) => ring.map(([east, north]) => [east + 1, north]))));
    const issue = found(
      [...run.checks, ...run.measures.flatMap((each) => each.issues)].filter((each) => /front/.test(each.where)),
      'zone-far-from-parking',
    );
    expect(issue.message).toMatch(/85 km.*correct the outline/);
    expectNothingElseLost(run);
  });
});

function withoutProperty(run: WholeRun, id: string): WholeRun['plan'] {
  const days = run.plan.days.map((day) => ({ ...day, stops: day.stops.filter((stop) => stop.propertyId !== id) }));
  return { ...run.plan, days };
}

describe('absurd numbers are named by the checks, and the rest is planned', () => {
  const gate = (book: Json): object => property(book, BAD).gates?.[0] as object;
  test.each<readonly [string, Change, string, RegExp]>([
    ['a cliff', (book) => Object.assign(zone(book), { slopeDeg: 50 }), 'figure-absurd', /per cent/],
    ['a gate of 400 ft', (book) => Object.assign(gate(book), { clearWidthIn: 4800 }), 'figure-absurd', /unit/],
    [
      'a parking point with latitude first',
      (book) => Object.assign(property(book, BAD), { parking: [40.04, -89.4] }),
      'figure-absurd',
      /latitude and longitude/,
    ],
  ])('%s', (_name, change, code, remedy) => {
    const run = wholeRun(text(change));
    const issue = found(run.checks, code);
    expect(issue.where).toMatch(/4 Teasel Lane/);
    expect(issue.message).toMatch(remedy);
    expectNothingElseLost(run);
  });
});

test('a refill that takes a day and a tank of a tanker lorry are named, and the plan is made all the same', () => {
  const run = wholeRun(
    text((book) => {
      Object.assign((book.machines as Json[])[0]?.compartments?.[0] as object, { capacityGal: 18_500 });
      Object.assign(book.rigs?.[0] as object, { refillMin: 500, payloadLb: 300_000 });
    }),
  );
  const odd = run.checks.filter((each) => each.code === 'figure-absurd');
  expect(odd.map((each) => each.where)).toEqual(['machine Stand-on 35, tank', 'rig Rig North', 'rig Rig North']);
  for (const each of odd) expect(each.message).toMatch(/check the figure and its unit/);
  expect(run.verdict.violations).toEqual([]);
});

describe('a round with nothing to do', () => {
  test.each<readonly [string, Change]>([
    ['without properties', (book) => Object.assign(book.rounds?.[0] as object, { propertyIds: [] })],
    [
      'with everybody skipped',
      (book) =>
        Object.assign(book.rounds?.[0] as object, {
          skipped: KEPT.map((propertyId) => ({ propertyId, reason: 'paused' })),
        }),
    ],
    [
      'without turf',
      (book) => {
        for (const each of book.properties as Json[]) (each as Record<string, unknown>).zones = [];
      },
    ],
  ])('%s', (_name, change) => {
    const read = readBook(text(change), 'round.json');
    if (!read.ok) throw new Error(read.error.detail);
    const built = buildProblem(read.value.book, 'spring');
    if (built.ok) throw new Error('it was planned');
    expect(built.error.code).toBe('nothing-to-do');
    expect(built.error.where).toBe('round Spring pre-emergent');
    expect(built.error.hint.length).toBeGreaterThan(HINT_LENGTH);
  });

  test('is named by the checks before anybody plans', () => {
    const read = readBook(
      text((book) => Object.assign(book.rounds?.[0] as object, { propertyIds: [] })),
      'round.json',
    );
    if (!read.ok) throw new Error(read.error.detail);
    expect(found(checkBook(read.value.book), 'round-senseless').message).toMatch(/choose more lawns or zones/);
  });
});

describe('work that no method can do is listed with every reason', () => {
  const reel = (book: Json): Record<string, unknown> => book.handMethods?.[0] as unknown as Record<string, unknown>;

  test('a gate narrower than every machine and a hose too short', () => {
    const run = wholeRun(
      text((book) => {
        for (const gate of property(book, BAD).gates as Json[]) Object.assign(gate, { clearWidthIn: 28 });
        reel(book).reachFt = 60;
      }),
    );
    expect(unplacedTasks(run.plan)).toContain(`${BAD} back pre-emergent 0`);
    const left = run.plan.unplaced.find((each) => each.propertyId === BAD);
    expect(left).toMatchObject({ propertyName: '4 Teasel Lane', zoneName: 'back' });
    expect(left?.reasons[0]?.words).toMatch(/gate 28 in, machine 35 in/);
    expect(left?.reasons[0]?.words).toMatch(/farthest corner \d+(\.\d)? ft, hose 60 ft/);
    expect(run.verdict.violations).toEqual([]);
    // The only other zone that needs the hose is the back of number 6; everything the machine does is still planned.
    const needHose = [`${BAD} back pre-emergent 0`, 'teasel-lane-6 back pre-emergent 0'];
    expect(unplacedTasks(run.plan)).toEqual(needHose);
    expect(placedTasks(run.plan)).toEqual(placedTasks(good.plan).filter((each) => !needHose.includes(each)));
  });

  test("a tank smaller than a hand gun's minimum", () => {
    const run = wholeRun(
      text((book) => {
        reel(book).drawsFrom = { kind: 'rig', capacityGal: 4, sumpGal: 1, agitated: true };
        reel(book).leastVolumeGal = 5;
      }),
    );
    const issue = found(run.checks, 'vessel-unusable');
    expect(issue.where).toBe('hand method Hose reel 200 ft');
    expect(issue.message).toMatch(/at least 5 gal.*its tank gives 3 gal.*larger tank/);
    expect(unplacedTasks(run.plan)).toEqual(['teasel-lane-6 back pre-emergent 0']);
    expect(run.plan.unplaced[0]?.reasons[0]?.words).toMatch(/3 gal to draw, and needs 5 gal/);
    expect(run.verdict.violations).toEqual([]);
    expect(placedTasks(run.plan)).toHaveLength(11);
  });

  test.each([1e6, 1e12, 1e300])(
    'a hand method that takes %d minutes per 1,000 ft2: named, and no reason has a figure missing',
    (minutes) => {
      const run = wholeRun(text((book) => Object.assign(reel(book), { minutesPer1000SqFt: minutes })));
      expect(found(run.checks, 'figure-absurd').where).toBe('hand method Hose reel 200 ft');
      // One visit does all of a property, and the hose is wanted at the back of this one.
      const whole = ['teasel-lane-6 back pre-emergent 0', 'teasel-lane-6 front pre-emergent 0'];
      expect(unplacedTasks(run.plan)).toEqual(whole);
      expect(run.plan.unplaced[0]?.reasons[0]?.rigId).toBe('rig-north');
      const words = run.plan.unplaced.flatMap((each) => each.reasons.map((reason) => reason.words));
      expect(words.length).toBeGreaterThan(0);
      for (const each of words) expect(each).not.toMatch(/–|NaN|Infinity/);
      expect(run.verdict.violations).toEqual([]);
    },
  );

  test('nothing is lost: what is placed and what is left make up the whole round', () => {
    const run = wholeRun(text((book) => Object.assign(reel(book), { reachFt: 10 })));
    expect([...placedTasks(run.plan), ...unplacedTasks(run.plan)].sort()).toEqual(placedTasks(good.plan));
  });
});
