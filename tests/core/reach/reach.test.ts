import { describe, expect, it } from 'vitest';
import type { Book, HandMethod, Machine, Zone } from '../../../core/book/index.ts';
import { reach } from '../../../core/reach/index.ts';
import { quantity } from '../../../core/units/index.ts';
import { ask, BOOM, byId, hand, measured, sampleBook, TINES } from './sample.ts';

function withMachine(change: Partial<Machine>): Book {
  const book = sampleBook();
  return { ...book, machines: book.machines.map((each) => (each.id === 'heron' ? { ...each, ...change } : each)) };
}

function withHand(id: string, change: Partial<HandMethod>): Book {
  const book = sampleBook();
  return { ...book, handMethods: book.handMethods.map((each) => (each.id === id ? { ...each, ...change } : each)) };
}

function gate(clearWidthIn: number) {
  return {
    property: { gates: [{ id: 'g', name: 'G', clearWidthIn, locked: false }] },
    zone: { gateIds: ['g'] },
  };
}

describe('gates', () => {
  it('refuses a narrower gate with both figures', () => {
    expect(reach(ask(BOOM, 'spray', gate(34)))).toMatchObject({
      can: false,
      reason: 'gate-too-narrow',
      tight: false,
      words: 'gate 34 in, machine 36 in',
    });
  });

  it('is tight under 2 in to spare (common practice, no source: a 36-in machine goes through a 3-ft gate)', () => {
    expect(reach(ask(BOOM, 'spray', gate(36)))).toMatchObject({ can: true, reason: 'gate-tight', tight: true });
    expect(reach(ask(BOOM, 'spray', gate(37.9)))).toMatchObject({ can: true, reason: 'gate-tight', tight: true });
    expect(reach(ask(BOOM, 'spray', gate(38)))).toMatchObject({ can: true, reason: 'fits', tight: false });
  });

  it('a 46-in machine goes through a 4-ft gate (common practice, no source)', () => {
    const book = withMachine({ transitWidthIn: 46 });
    expect(reach(ask(BOOM, 'spray', { book, ...gate(48) }))).toMatchObject({ can: true, tight: false });
  });

  it('a gap of a hundredth of an inch too little is shown as such', () => {
    expect(reach(ask(BOOM, 'spray', gate(35.99))).words).toBe('gate 35.99 in, machine 36 in');
  });

  it('every gate on the way counts, and the narrowest is named', () => {
    const both = { zone: { gateIds: ['side', 'arch'] } };
    expect(reach(ask(BOOM, 'spray', both))).toMatchObject({ can: true, reason: 'gate-tight', tight: true });
    const book = withMachine({ transitWidthIn: 40 });
    const answer = reach(ask(BOOM, 'spray', { ...both, book }));
    expect(answer.reason).toBe('gate-too-narrow');
    expect(answer.words).toContain('gate 37 in (Arch, the narrowest of 2)');
    expect(reach(ask(BOOM, 'spray', { zone: { gateIds: ['side'] }, book })).can).toBe(true);
  });

  it('gates that are not on the way do not count; people on foot pass', () => {
    expect(reach(ask(BOOM, 'spray', { property: gate(20).property })).words).toBe('no gate on the way');
    expect(reach(ask(hand('reel'), 'spray', gate(20))).can).toBe(true);
  });
});

describe('ground', () => {
  it('holds the slope up to the figure of the machine, and no farther', () => {
    expect(reach(ask(BOOM, 'spray', { zone: { slopeDeg: 15 } })).can).toBe(true);
    expect(reach(ask(BOOM, 'spray', { zone: { slopeDeg: 15.5 } }))).toMatchObject({
      can: false,
      reason: 'too-steep',
      words: 'slope 15.5°, machine up to 15°',
    });
    expect(reach(ask(hand('pack'), 'spray', { zone: { slopeDeg: 40 } })).can).toBe(true);
  });

  it('a hose reel reaches 75 ft (common practice, no source)', () => {
    expect(reach(ask(hand('reel'), 'spray', { farthestFt: 75 }))).toMatchObject({ can: true, reason: 'fits' });
    expect(reach(ask(hand('reel'), 'spray', { farthestFt: 92 }))).toMatchObject({
      can: false,
      reason: 'hose-too-short',
      words: 'farthest corner 92 ft, hose 75 ft',
    });
  });

  it('says no where nobody knows how far the hose has to go', () => {
    for (const farthestFt of [null, Number.NaN]) {
      const answer = reach(ask(hand('reel'), 'spray', { farthestFt }));
      expect(answer).toMatchObject({ can: false, reason: 'hose-too-short' });
      expect(answer.words).toContain('not known');
    }
    expect(reach(ask(hand('pack'), 'spray', { farthestFt: null }))).toMatchObject({ can: true, words: 'on foot' });
  });

  describe('a hose that draws from a machine reaches from where that machine is parked', () => {
    const near = (zone: Partial<Zone>) => ({ zone: { ...byId(sampleBook().properties, 'elm').zones[1]!, ...zone } });
    const asked = (zone: Partial<Zone>, farthestFt: number | null = 92, wetGround = false) =>
      reach({
        ...ask(hand('lance'), 'spray', { farthestFt, wetGround }),
        stands: () => [{ ...near(zone), farthestFt: quantity<'ft'>(38) }],
      });

    it('which it says with its figures', () => {
      // The machine is 36 in wide, the gates 48 and 37 in.
      expect(asked({})).toMatchObject({
        can: true,
        words: 'farthest corner 38 ft from Heron on back, hose 40 ft',
      });
      expect(asked({}, null)).toMatchObject({ can: true });
    });

    it('and from the stand where that is near enough', () => {
      expect(asked({}, 40)).toMatchObject({ can: true, words: 'farthest corner 40 ft, hose 40 ft' });
    });

    it('but not from a zone onto which it does not get', () => {
      const far = { can: false, reason: 'hose-too-short', words: 'farthest corner 92 ft, hose 40 ft' };
      expect(asked({ slopeDeg: 15.1 })).toMatchObject(far);
      expect(asked({ slopeDeg: 15 })).toMatchObject({ can: true });
      expect(asked({ wetLimitLb: 786 }, 92, true)).toMatchObject(far);
      expect(asked({ wetLimitLb: 786 })).toMatchObject({ can: true });
      const book = withMachine({ transitWidthIn: 38 });
      const narrow = { ...ask(hand('lance'), 'spray', { book, farthestFt: 92 }) };
      const stands = () => [{ ...near({}), farthestFt: quantity<'ft'>(38) }];
      expect(reach({ ...narrow, stands })).toMatchObject(far);
    });

    it('and no farther than it reaches from the best of them', () => {
      const stands = () => [60, 45, 50].map((feet) => ({ ...near({ gateIds: [] }), farthestFt: quantity<'ft'>(feet) }));
      expect(reach({ ...ask(hand('lance'), 'spray', { farthestFt: 92 }), stands })).toMatchObject({
        can: false,
        words: 'farthest corner 45 ft from Heron on back, hose 40 ft',
      });
    });

    it('which is nothing to a reel of the rig', () => {
      const stands = () => [{ ...near({}), farthestFt: quantity<'ft'>(10) }];
      expect(reach({ ...ask(hand('reel'), 'spray', { farthestFt: 92 }), stands }).can).toBe(false);
    });
  });

  it('weighs the full machine on wet ground only: 500 + 20 x 8.34 + 120 = 786.8 lb', () => {
    const soft = { zone: { wetLimitLb: 786 } };
    expect(reach(ask(BOOM, 'spray', { ...soft, wetGround: true }))).toMatchObject({
      can: false,
      reason: 'too-heavy-when-wet',
      words: 'machine 786.8 lb full, wet ground carries 786 lb',
    });
    expect(reach(ask(BOOM, 'spray', soft)).can).toBe(true);
    expect(reach(ask(BOOM, 'spray', { zone: { wetLimitLb: 786.8 }, wetGround: true })).can).toBe(true);
    expect(reach(ask(BOOM, 'spray', { wetGround: true })).can).toBe(true);
  });
});

describe('the rig', () => {
  const bay = byId(sampleBook().rigs, 'bay');

  it('carries the machine and the hand method', () => {
    expect(reach(ask(BOOM, 'spray', { rig: bay }))).toMatchObject({
      can: false,
      reason: 'not-carried',
      rigId: 'bay',
      words: 'Heron is not on rig Bay',
    });
    expect(reach(ask(hand('reel'), 'spray', { rig: bay })).reason).toBe('not-carried');
  });

  it('a gun that draws from a machine needs that machine on board', () => {
    const near = { farthestFt: 30 };
    expect(reach(ask(hand('lance'), 'spray', { ...near, rig: bay })).words).toBe(
      'lance draws from Heron, which is not on rig Bay',
    );
    expect(reach(ask(hand('lance'), 'spray', near)).can).toBe(true);
  });

  it('asks nothing of a rig that is not named', () => {
    expect(reach(ask(TINES, 'cores', { rig: null, property: { noTrailer: true } }))).toMatchObject({
      can: true,
      rigId: null,
    });
  });

  it('brings no trailer where none can go', () => {
    const property = { noTrailer: true };
    expect(reach(ask(TINES, 'cores', { property }))).toMatchObject({ can: false, reason: 'no-trailer-access' });
    expect(reach(ask(TINES, 'cores')).can).toBe(true);
    expect(reach(ask(BOOM, 'spray', { property })).can).toBe(true);
    const ash = byId(sampleBook().rigs, 'ash');
    const towed = { ...ash, machines: [{ machineId: 'heron', ride: 'trailer', unloadMin: 0, loadMin: 0 } as const] };
    expect(reach(ask(hand('lance'), 'spray', { property, farthestFt: 30, rig: towed })).reason).toBe(
      'no-trailer-access',
    );
  });
});

describe('the material', () => {
  function asking(by: 'mix' | 'label'): Book {
    const book = sampleBook();
    if (by === 'mix') return { ...book, mixes: book.mixes.map((each) => ({ ...each, needsAgitation: true })) };
    return {
      ...book,
      products: book.products.map((each) =>
        each.id === 'powder' ? { ...each, label: { ...each.label, needsAgitation: true } } : each,
      ),
    };
  }

  it('excludes tanks without agitation where the mix or a label asks for it', () => {
    for (const by of ['mix', 'label'] as const) {
      const book = asking(by);
      expect(reach(ask(hand('pack'), 'spray', { book }))).toMatchObject({ can: false, reason: 'no-agitation' });
      expect(reach(ask(hand('reel'), 'spray', { book })).can).toBe(true);
      expect(reach(ask(BOOM, 'spray', { book })).can).toBe(true);
    }
    expect(reach(ask(hand('pack'), 'spray', { book: asking('mix') })).words).toBe(
      'mix Mix asks for agitation, backpack has none',
    );
    expect(reach(ask(hand('pack'), 'spray', { book: asking('label') })).words).toContain('label of Powder');
  });

  it('of two tanks that run together, both have to be agitated', () => {
    const machine = byId(sampleBook().machines, 'heron');
    const still = { kind: 'tank', id: 't2', name: 'left tank', capacityGal: 10, sumpGal: 0, agitated: false } as const;
    const heads = machine.heads.map((each) => (each.id === 'boom' ? { ...each, compartmentIds: ['t', 't2'] } : each));
    const change = { heads, compartments: [...machine.compartments, still] };
    const book = { ...withMachine(change), mixes: asking('mix').mixes };
    expect(reach(ask(BOOM, 'spray', { book })).words).toContain('left tank has none');
    expect(reach(ask(BOOM, 'spray', { book: withMachine(change) })).can).toBe(true);
  });

  it('wants a head made for the treatment, with something to draw from', () => {
    expect(reach(ask(BOOM, 'feed'))).toMatchObject({ can: false, reason: 'no-head-for-treatment' });
    expect(reach(ask(BOOM, 'feed')).words).toBe('boom of Heron is for spraying, the treatment is spreading');
    const machine = byId(sampleBook().machines, 'heron');
    const dry = withMachine({ heads: machine.heads.map((each) => ({ ...each, compartmentIds: ['h'] })) });
    expect(reach(ask(BOOM, 'spray', { book: dry })).words).toBe('boom of Heron draws from no tank');
  });

  it.each([
    ['reel', 'spray', true],
    ['pack', 'spray', true],
    ['crank', 'spray', false],
    ['crank', 'feed', true],
    ['crank', 'sow', true],
    ['reel', 'feed', false],
    ['pack', 'sow', false],
    ['crank', 'cores', false],
    ['reel', 'cores', false],
  ])('%s for %s: %s', (id, treatment, can) => {
    const answer = reach(ask(hand(id), treatment));
    expect(answer.can).toBe(can);
    if (!can) expect(answer.reason).toBe('method-wrong-for-treatment');
  });

  it('a hose on a hopper is the wrong method', () => {
    const book = withHand('lance', { drawsFrom: { kind: 'machine', machineId: 'heron', compartmentId: 'h' } });
    const answer = reach(ask(hand('lance'), 'spray', { book, farthestFt: 30 }));
    expect(answer).toMatchObject({
      can: false,
      reason: 'method-wrong-for-treatment',
      words: 'lance draws from no tank',
    });
  });

  it('a tank smaller than what the gun needs is refused, counting what can be drawn', () => {
    const tank = (capacityGal: number) =>
      withHand('reel', { drawsFrom: { kind: 'rig', capacityGal, sumpGal: 3, agitated: true } });
    expect(reach(ask(hand('reel'), 'spray', { book: tank(8) })).can).toBe(true);
    expect(reach(ask(hand('reel'), 'spray', { book: tank(7.5) }))).toMatchObject({
      can: false,
      reason: 'vessel-below-least-volume',
      words: 'reel has 4.5 gal to draw, and needs 5 gal to work evenly',
    });
  });

  it('a tank that is all sump gives nothing', () => {
    const compartments = [{ kind: 'tank', id: 't', name: 'tank', capacityGal: 2, sumpGal: 2, agitated: true } as const];
    expect(reach(ask(BOOM, 'spray', { book: withMachine({ compartments }) }))).toMatchObject({
      can: false,
      reason: 'vessel-below-least-volume',
    });
  });
});

describe('the zone', () => {
  it('has to be measured and free of faults', () => {
    const { zone } = ask(BOOM, 'spray');
    const unknown = reach(ask(BOOM, 'spray', { zoneMeasure: measured(zone, null) }));
    const faulty = reach(ask(BOOM, 'spray', { zoneMeasure: measured(zone, 900, false) }));
    expect([unknown.can, faulty.can]).toEqual([false, false]);
    expect([unknown.reason, faulty.reason]).toEqual(['zone-not-measured', 'zone-not-measured']);
    expect(unknown.words).not.toBe(faulty.words);
    const byHose = { zoneMeasure: measured(zone, null), farthestFt: Number.POSITIVE_INFINITY };
    expect(reach(ask(hand('reel'), 'spray', byHose)).reason).toBe('zone-not-measured');
  });
});

describe('the order of the tests', () => {
  it('gives the first that fails as each one is put right', () => {
    const book = withMachine({ transitWidthIn: 40, maxSlopeDeg: 5, compartments: [] });
    const { zone } = ask(BOOM, 'spray');
    const rig = byId(book.rigs, 'bay');
    const bad = { book, rig, zoneMeasure: measured(zone, null), zone: { gateIds: ['arch'], slopeDeg: 9 } };
    const fixes = [
      {},
      { zone: { slopeDeg: 9 } },
      { zone: {} },
      { zone: {}, rig: byId(book.rigs, 'ash') },
      { zone: {}, rig: byId(book.rigs, 'ash'), book: sampleBook() },
      { zone: {}, rig: byId(book.rigs, 'ash'), book: sampleBook(), zoneMeasure: measured(zone) },
    ];
    expect(fixes.map((each) => reach(ask(BOOM, 'spray', { ...bad, ...each })).reason)).toEqual([
      'gate-too-narrow',
      'too-steep',
      'not-carried',
      'no-head-for-treatment',
      'zone-not-measured',
      'fits',
    ]);
  });

  it('answers for a method that the book does not hold', () => {
    const answer = reach(ask({ kind: 'machine', machineId: 'heron', headId: 'gone' }, 'spray'));
    expect(answer).toMatchObject({ can: false, reason: 'not-carried', words: 'the book has no method heron/gone' });
  });
});
