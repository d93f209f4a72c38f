import { describe, expect, it } from 'vitest';
import { ROAD_SETTINGS, type RoadSettings } from '../../../core/roads/index.ts';
import { at, drive, mapOf, PLAIN, type Town, townXml } from './town.ts';

/**
 * Every rule on a town small enough to work out the answer: at 10 m/s and with nothing lost at turns, seconds are metres over
 * ten. A and B are 1,000 m apart unless it says otherwise, and places lie 100 m inside.
 */
const SQUARE: Town['nodes'] = { A: [0, 0], B: [1000, 0], C: [1000, 1000], D: [0, 1000] };
/** Places are joined to a decimetre, which may be a tenth of a second. */
const near = (sec: number): unknown => expect.closeTo(sec, 0);
const withTurns = (turns: Partial<RoadSettings['turns']>): RoadSettings => ({
  ...PLAIN,
  turns: { ...PLAIN.turns, ...turns },
});

describe('lengths and speeds', () => {
  it('drives a straight road in its length over its speed', async () => {
    const { seconds, metres } = await drive({ nodes: SQUARE, ways: [['A B']] });
    expect(await metres([100, 5], [900, -5])).toBe(800);
    expect(seconds([100, 5], [900, -5])).toBe(80);
    expect(seconds([900, 0], [100, 0])).toBe(80);
    expect(seconds([300, 0], [300, 0])).toBe(0);
  });

  it('takes a share of a limit, also in miles per hour, and the class where there is none', async () => {
    const share: RoadSettings = { ...PLAIN, shareOfLimit: 0.8 };
    const time = async (tags: Record<string, string>): Promise<number | null> =>
      (await drive({ nodes: SQUARE, ways: [['A B', tags]] }, share)).seconds([0, 0], [1000, 0]);
    expect(await time({ maxspeed: '50' })).toBeCloseTo(1000 / ((0.8 * 50) / 3.6), 1);
    // 30 mph are 48.28 km/h, kept as 48.
    expect(await time({ maxspeed: '30 mph' })).toBeCloseTo(1000 / ((0.8 * 48) / 3.6), 1);
    expect(await time({ maxspeed: 'none' })).toBe(100);
    expect(await time({ maxspeed: 'signals' })).toBe(100);
    const both = await drive({ nodes: SQUARE, ways: [['A B', { 'maxspeed:forward': '90', maxspeed: '45' }]] }, PLAIN);
    expect([both.seconds([0, 0], [1000, 0]), both.seconds([1000, 0], [0, 0])]).toEqual([40, 80]);
  });

  it('drives no faster than the truck does, and slower on gravel', async () => {
    const fast: Town = { nodes: SQUARE, ways: [['A B', { maxspeed: '120' }]] };
    expect((await drive(fast, { ...PLAIN, mostKmh: 72 })).seconds([0, 0], [1000, 0])).toBe(50);
    const gravel: Town = { nodes: SQUARE, ways: [['A B', { surface: 'gravel' }]] };
    expect((await drive(gravel, { ...PLAIN, shareUnpaved: 0.5 })).seconds([0, 0], [1000, 0])).toBe(200);
  });
});

describe('one-way roads', () => {
  // Without the dead end nobody could ever turn round, and the two directions of the ring would be two networks.
  const ring = (tags: Record<string, string>): Town => ({
    nodes: { ...SQUARE, X: [0, -3000] },
    ways: [['A B', tags], ['B C D A'], ['A X']],
  });
  it.each([
    ['yes', 80, 320],
    ['1', 80, 320],
    ['-1', 320, 80],
    ['no', 80, 80],
  ])('oneway=%s', async (oneway, there, back) => {
    const { seconds } = await drive(ring({ oneway }));
    // Against the one-way road: on to its end, 100 m, round by the other three sides, 3,000 m, and 100 m in.
    expect([seconds([100, 0], [900, 0]), seconds([900, 0], [100, 0])]).toEqual([there, back]);
  });

  it('takes motorways and roundabouts for one-way unless they say otherwise', async () => {
    const oneWay: readonly Record<string, string>[] = [
      { highway: 'motorway' },
      { junction: 'roundabout' },
      { junction: 'circular' },
    ];
    for (const tags of oneWay) {
      const { seconds } = await drive(ring(tags));
      expect([seconds([100, 0], [900, 0]), seconds([900, 0], [100, 0])]).toEqual([80, 320]);
    }
    const { seconds } = await drive(ring({ highway: 'motorway', oneway: 'no' }));
    expect(seconds([900, 0], [100, 0])).toBe(80);
  });

  it('leaves out roads whose direction changes with the hour', async () => {
    const map = await mapOf(ring({ oneway: 'reversible' }));
    expect(map.about.counts.roads).toBe(2);
  });

  it('goes round a ring that is one way with one entrance', async () => {
    const town: Town = { nodes: { ...SQUARE, E: [-1000, 0] }, ways: [['E A'], ['A B C D A', { oneway: 'yes' }]] };
    const { seconds } = await drive(town);
    expect([seconds([-500, 0], [500, 0]), seconds([500, 0], [-500, 0])]).toEqual([near(100), near(400)]);
    // From a place back to one before it on the ring: the rest of the ring is 3,800 m, and the start of it lies on it.
    expect(seconds([300, 0], [100, 0])).toEqual(near(380));
  });
});

describe('turns', () => {
  /** A crossing at O with arms to the west, east, south and north, and a road round outside from north to west. */
  const CROSS: Town['nodes'] = { O: [0, 0], W: [-1000, 0], E: [1000, 0], S: [0, -1000], N: [0, 1000] };
  const cross = (restrictions: Town['restrictions']): Town => ({
    nodes: CROSS,
    ways: [['S O'], ['O N'], ['O W'], ['O E'], ['E N W S E']],
    restrictions: restrictions ?? [],
  });

  it('forbids the left turn that a restriction forbids, and no other', async () => {
    const free = await drive(cross([]));
    const { seconds } = await drive(cross([{ kind: 'no_left_turn', from: 0, via: 'O', to: 2 }]));
    expect(free.seconds([0, -500], [-500, 0])).toBe(100);
    // Back to the south is 500 m, the outer road to the west 1,414.2 m, and 500 m in: shorter than any way by north or east.
    expect(seconds([0, -500], [-500, 0])).toBe(241.4);
    expect(seconds([0, -500], [500, 0])).toBe(100);
    expect(seconds([-500, 0], [0, -500])).toBe(100);
  });

  it('forbids all turns but one where only that one is allowed', async () => {
    const { seconds } = await drive(cross([{ kind: 'only_straight_on', from: 0, via: 'O', to: 1 }]));
    expect(seconds([0, -500], [0, 500])).toBe(100);
    expect(seconds([0, -500], [-500, 0])).toBe(241.4);
    expect(seconds([0, -500], [500, 0])).toBe(241.4);
    expect(seconds([-500, 0], [500, 0])).toBe(100);
  });

  it('counts restrictions by way of another way, and those that it cannot use', async () => {
    const viaWay =
      '<relation id="9"><member type="way" ref="1" role="from"/><member type="way" ref="2" role="via"/>' +
      '<member type="way" ref="3" role="to"/><tag k="type" v="restriction"/><tag k="restriction" v="no_u_turn"/></relation>';
    const bicycles = viaWay.replace('"way" ref="2" role="via"', '"node" ref="1" role="via"');
    const xml = townXml(cross([{ kind: 'no_left_turn', from: 0, via: 'O', to: 2 }])).replace(
      '</osm>',
      `${viaWay}${bicycles.replace('k="restriction"', 'k="restriction:conditional"')}${bicycles.replace('</relation>', '<tag k="except" v="bicycle;motorcar"/></relation>')}</osm>`,
    );
    expect((await mapOf(xml)).about.counts).toMatchObject({
      relations: 4,
      restrictionsUsed: 1,
      restrictionsViaWay: 1,
      restrictionsIgnored: 2,
    });
  });

  it('holds restrictions for heavy goods vehicles for those alone', async () => {
    const xml = townXml(cross([{ kind: 'no_left_turn', from: 0, via: 'O', to: 2 }])).replace(
      'k="restriction"',
      'k="restriction:hgv"',
    );
    const map = await mapOf(xml);
    expect([...map.restrictions.flags]).toEqual([2]);
  });

  it('forbids what a heavy truck alone may not, where the truck is one', async () => {
    const xml = townXml(cross([{ kind: 'no_left_turn', from: 0, via: 'O', to: 2 }])).replace(
      'k="restriction"',
      'k="restriction:hgv"',
    );
    const { roadNetwork } = await import('../../../core/roads/index.ts');
    const map = await mapOf(xml);
    const links = (heavy: boolean): number =>
      roadNetwork(map, { ...PLAIN, truck: { ...PLAIN.truck, heavy } }).next.node.length;
    expect(links(false) - links(true)).toBe(1);
  });

  it('knows restrictions with several roads to come from or go to, and leaves those that do not say which', async () => {
    const member = (way: number, role: string): string => `<member type="way" ref="${way + 1}" role="${role}"/>`;
    const relation = (kind: string, ways: string): string =>
      `<relation id="9">${ways}<member type="node" ref="1" role="via"/><tag k="type" v="restriction"/><tag k="restriction" v="${kind}"/></relation>`;
    const used = async (kind: string, ways: string, town = cross([])): Promise<readonly number[]> => {
      const map = await mapOf(townXml(town).replace('</osm>', `${relation(kind, ways)}</osm>`));
      return [map.restrictions.from.length, map.about.counts.restrictionsUsed, map.about.counts.restrictionsIgnored];
    };
    const [from, to] = [member(0, 'from'), member(2, 'to')];
    expect(await used('no_entry', from + member(1, 'from') + to)).toEqual([2, 1, 0]);
    expect(await used('no_exit', from + member(1, 'to') + to)).toEqual([2, 1, 0]);
    expect(await used('only_straight_on', from + member(1, 'to') + to)).toEqual([0, 0, 1]);
    expect(await used('no_left_turn', from)).toEqual([0, 0, 1]);
    expect(await used('perhaps', from + to)).toEqual([0, 0, 1]);
    expect(await used('no_left_turn', from + member(77, 'to'))).toEqual([0, 0, 1]);
    // The road to come from runs through the crossing, so that it may be either arm.
    const through: Town = { nodes: CROSS, ways: [['S O N'], ['N W'], ['O W'], ['O E']] };
    expect(await used('no_left_turn', from + to, through)).toEqual([0, 0, 1]);
  });

  it('turns round at dead ends alone, and takes its time for it', async () => {
    const road: Town = { nodes: { ...SQUARE, E: [1000, -500] }, ways: [['A B'], ['B C'], ['B E']] };
    const { seconds, snap } = await drive(road, withTurns({ roundSec: 25 }), { side: 'kerb' });
    // Both places on the right of the road to the east: from the second to the first one must come back from the west.
    expect(snap(200, -5).directions).toBe(1);
    expect(seconds([800, -5], [200, -5])).toBe(
      // To B, on to the dead end E, round, back to B, back to A, round, and to the place: E is nearer than C.
      (200 + 500 + 500 + 1000 + 200) / 10 + 2 * 25,
    );
    expect(seconds([200, -5], [800, -5])).toBe(60);
  });

  it('loses time at turns by their angle and side, none at bends', async () => {
    const settings = withTurns({ nearSec: 3, acrossSec: 6 });
    const right = await drive(cross([]), settings);
    expect(right.seconds([0, -500], [0, 500])).toBe(100);
    expect(right.seconds([0, -500], [500, 0])).toBe(103);
    expect(right.seconds([0, -500], [-500, 0])).toBe(106);
    const left = await drive(cross([]), { ...settings, drivesOn: 'left' });
    expect([left.seconds([0, -500], [500, 0]), left.seconds([0, -500], [-500, 0])]).toEqual([106, 103]);
    // At the end of one road and the beginning of the next nothing is lost, however sharp.
    const bend = await drive({ nodes: SQUARE, ways: [['A B'], ['B C']] }, settings);
    expect(bend.seconds([500, 0], [1000, 500])).toBe(100);
    // 60 degrees lie half-way between the free 30 and the full 90.
    const slant: Town = {
      nodes: { O: [0, 0], S: [0, -1000], N: [0, 1000], P: [866.0254, 500] },
      ways: [['S O N'], ['O P']],
    };
    expect((await drive(slant, settings)).seconds([0, -500], [433.0127, 250])).toBe(101.5);
  });

  it('loses nothing on the way round a roundabout, and nothing by a kink right at a crossing', async () => {
    const settings = withTurns({ nearSec: 3, acrossSec: 6 });
    const round: Town = {
      nodes: { E: [50, 0], N: [0, 50], W: [-50, 0], S: [0, -50], X: [0, -1000], Y: [0, 1000], Z: [1000, 0] },
      ways: [['E N W S E', { junction: 'roundabout' }], ['X S'], ['N Y'], ['E Z']],
    };
    const { seconds } = await drive(round, settings);
    // In and out by 45 degrees to the right, a quarter of the way from 30 to 90; between them 141.4 m and a bend of 90 degrees.
    expect(seconds([0, -500], [0, 500])).toBeCloseTo((450 + 141.4 + 450) / 10 + 2 * 0.25 * 3, 0);
    const kinked: Town = {
      nodes: { O: [0, 0], S: [0, -1000], K: [4, 4], N: [0, 1000], E: [1000, 0] },
      ways: [['S O'], ['O K N'], ['O E']],
    };
    expect((await drive(kinked, settings)).seconds([0, -500], [2, 500])).toBeCloseTo(100, 0);
  });

  it('waits at signals, at a crossing and before it, by direction where one is told', async () => {
    const settings = withTurns({ signalSec: 8 });
    const lights = { highway: 'traffic_signals' };
    const at0 = await drive({ ...cross([]), nodes: { ...CROSS, O: [0, 0, lights] } }, settings);
    expect([at0.seconds([0, -500], [0, 500]), at0.seconds([0, -500], [500, 0])]).toEqual([108, 108]);
    const before = await drive(
      {
        nodes: { A: [0, 0], M: [500, 0, { ...lights, 'traffic_signals:direction': 'forward' }], B: [1000, 0] },
        ways: [['A M B']],
      },
      settings,
    );
    expect([before.seconds([0, 0], [1000, 0]), before.seconds([1000, 0], [0, 0])]).toEqual([108, 100]);
  });
});

describe('barriers', () => {
  /** From A to B straight, with something at M, or round by C and D. */
  const barred = (tags: Record<string, string>): Town => ({
    nodes: { ...SQUARE, M: [500, 0, tags], X: [0, -3000] },
    ways: [['A M B'], ['B C D A'], ['A X']],
  });
  it.each([
    [{ barrier: 'bollard' }, 320],
    [{ barrier: 'cattle_grid' }, 80],
    [{ barrier: 'bollard', motor_vehicle: 'yes' }, 80],
    [{ barrier: 'gate' }, 100],
    [{ barrier: 'gate', locked: 'yes' }, 320],
    [{ barrier: 'gate', access: 'private' }, 320],
    [{ barrier: 'gate', access: 'no' }, 320],
  ])('%j', async (tags, sec) => {
    const { seconds } = await drive(barred(tags), withTurns({ gateSec: 20 }));
    expect(seconds([100, 0], [900, 0])).toBe(sec);
  });

  it('goes through a private gate where there is no other way', async () => {
    const town = barred({ barrier: 'gate', access: 'private' });
    const { seconds } = await drive({ ...town, ways: [['A M B']] });
    expect(seconds([100, 0], [900, 0])).toBe(80);
  });
});

describe('who may drive there', () => {
  const lane = (tags: Record<string, string>): Town => ({
    nodes: SQUARE,
    ways: [['A B', tags], ['B C D A'], ['A X'], ['B Y']].map((way) => way as never),
  });
  const town = (tags: Record<string, string>): Town => ({
    ...lane(tags),
    nodes: { ...SQUARE, X: [-500, 0], Y: [1500, 0] },
  });
  it.each(['private', 'destination', 'customers', 'delivery'])(
    'does not pass through access=%s but ends there',
    async (access) => {
      const { seconds } = await drive(town({ access }));
      // From X to Y: 500 m, round three sides, 500 m.
      expect(seconds([-500, 0], [1500, 0])).toBe(400);
      expect(seconds([-500, 0], [300, 0])).toBe(80);
      expect(seconds([300, 0], [1500, 0])).toBe(120);
      expect(seconds([700, 0], [300, 0])).toBe(40);
    },
  );

  it.each([
    [{ highway: 'track' }, 400],
    [{ highway: 'track', motor_vehicle: 'yes' }, 200],
    [{ highway: 'service', service: 'parking_aisle' }, 200],
    [{ highway: 'service', service: 'drive-through' }, 200],
    [{ highway: 'service', service: 'alley' }, 200],
    [{ highway: 'service', service: 'emergency_access' }, 400],
    [{ highway: 'driveway' }, 400],
    [{ oneway: 'yes', 'oneway:motor_vehicle': 'no' }, 200],
    [{ oneway: 'alternating' }, 200],
  ])('%j for passing through', async (tags, sec) => {
    expect((await drive(town(tags))).seconds([1500, 0], [-500, 0])).toBe(sec);
  });

  it('passes through driveways no more than through private roads', async () => {
    const { seconds } = await drive(town({ highway: 'service', service: 'driveway' }));
    expect([seconds([-500, 0], [1500, 0]), seconds([-500, 0], [300, 0])]).toEqual([400, 80]);
  });

  it.each([
    [{ access: 'no' }, 400],
    [{ motor_vehicle: 'no' }, 400],
    [{ access: 'no', motor_vehicle: 'yes' }, 200],
    [{ access: 'private', vehicle: 'permissive' }, 200],
    [{ hgv: 'no' }, 200],
    [{ motor_vehicle: 'agricultural;forestry' }, 400],
    [{ area: 'yes' }, 400],
    [{ highway: 'footway' }, 400],
    [{ highway: 'proposed' }, 400],
  ])('%j for a light truck', async (tags, sec) => {
    expect((await drive(town(tags))).seconds([-500, 0], [1500, 0])).toBe(sec);
  });

  it('holds rules for heavy goods vehicles where the truck is one', async () => {
    const heavy: RoadSettings = { ...PLAIN, truck: { ...PLAIN.truck, heavy: true } };
    expect((await drive(town({ hgv: 'no' }), heavy)).seconds([-500, 0], [1500, 0])).toBe(400);
    expect((await drive(town({ motor_vehicle: 'no', hgv: 'yes' }), heavy)).seconds([-500, 0], [1500, 0])).toBe(200);
  });

  it('leaves private roads out altogether where the settings say so', async () => {
    const { snap } = await drive(town({ access: 'private' }), { ...PLAIN, privateRoads: 'no' }, { mostM: 1000 });
    expect(snap(300, 5).at[0]).not.toBeCloseTo(at(300, 5)[0], 4);
  });

  it.each([
    [{ maxheight: '3.0' }, { heightM: 3.2 }, 400],
    [{ maxheight: '3.0' }, { heightM: 2.9 }, 200],
    [{ maxheight: "10'6&quot;" }, { heightM: 3.19 }, 200],
    [{ maxheight: "10'6&quot;" }, { heightM: 3.21 }, 400],
    [{ maxheight: '10 ft' }, { heightM: 3.1 }, 400],
    [{ maxheight: 'default' }, { heightM: 9 }, 200],
    [{ maxwidth: '2' }, { widthM: 2.2 }, 400],
    [{ maxweight: '3.5' }, { weightKg: 3501 }, 400],
    [{ maxweight: '3.5' }, { weightKg: 3500 }, 200],
    [{ maxweight: '4 st' }, { weightKg: 3600 }, 200],
    [{ maxweight: '4 st' }, { weightKg: 3700 }, 400],
    [{ maxweight: '8000 lbs' }, { weightKg: 3700 }, 400],
    [{ maxweight: '7.5', maxgcweight: '5' }, { weightKg: 6000 }, 400],
    [{ trailer: 'no' }, { trailer: true }, 400],
    [{ trailer: 'no' }, { trailer: false }, 200],
  ])('%j for %j', async (tags, truck, sec) => {
    const { seconds } = await drive(town(tags), { ...PLAIN, truck: { ...PLAIN.truck, ...truck } });
    expect(seconds([-500, 0], [1500, 0])).toBe(sec);
  });

  it('minds the height of a bar at a point of the road', async () => {
    const bar: Town = {
      nodes: { ...SQUARE, M: [500, 0, { barrier: 'height_restrictor', maxheight: '2.1' }] },
      ways: [['A M B'], ['B C D A']],
    };
    const tall: RoadSettings = { ...PLAIN, truck: { ...PLAIN.truck, heightM: 2.5 } };
    expect([
      (await drive(bar)).seconds([100, 0], [900, 0]),
      (await drive(bar, tall)).seconds([100, 0], [900, 0]),
    ]).toEqual([80, 320]);
  });
});

describe('where places meet the roads', () => {
  const town: Town = {
    nodes: { ...SQUARE, I: [3000, 0], J: [4000, 0], K: [1000, -1000] },
    ways: [['A B C D A'], ['B K'], ['I J']],
  };

  it('stops on the side of the place, or on either', async () => {
    const kerb = await drive(town, PLAIN, { side: 'kerb' });
    // On the road from A to the east the right-hand side is the south.
    expect([kerb.snap(500, -10).directions, kerb.snap(500, 10).directions]).toEqual([1, 2]);
    expect((await drive(town, { ...PLAIN, drivesOn: 'left' }, { side: 'kerb' })).snap(500, -10).directions).toBe(2);
    expect((await drive(town)).snap(500, -10).directions).toBe(3);
    // On the road itself it lies on no side.
    expect(kerb.snap(500, 0).directions).toBe(3);
    // From the west side of the square one starts to the south. To the near side of the next road it is 1,000 m; to its far side
    // one passes by, turns round at the dead end K, and comes back: 500 + 1,000 + 1,000 + 1,000 + 500 m.
    expect(kerb.seconds([-5, 500], [500, -10])).toEqual(near(100));
    expect(kerb.seconds([-5, 500], [500, 10])).toEqual(near(400));
  });

  it('finds long roads beside short ones, wherever they pass', async () => {
    const far: Town = {
      nodes: { A: [0, 0], B: [30_000, 30_000], C: [30_000, 0], D: [29_000, 0] },
      ways: [['A B'], ['B C'], ['C D']],
    };
    const { snap, seconds } = await drive(far);
    // A line straight in degrees bends some metres off one that is straight on the ground.
    expect(Math.abs(snap(15_010, 14_990).awayM - 14.14)).toBeLessThan(5);
    expect(snap(29_500, 20).awayM).toBeCloseTo(20, 0);
    // Half of the slope, the side and half of the short road.
    expect(seconds([15_000, 15_000], [29_500, 0])).toBeCloseTo((15_000 * Math.SQRT2 + 30_000 + 500) / 10, -1);
  });

  it('never joins a place to roads that lead nowhere else, and says why', async () => {
    const { network } = await drive(town);
    const { snapPlaces } = await import('../../../core/roads/index.ts');
    const places = [
      { id: 'island', at: at(3500, 10) },
      { id: 'far', at: at(500, 500) },
      { id: 'outside', at: at(500, 90_000) },
      { id: 'fine', at: at(500, 20) },
    ];
    const [island, far, outside, fine] = snapPlaces(network, places);
    expect(island).toEqual({ kind: 'island', id: 'island', nearestM: expect.closeTo(2500, -2) });
    expect(far).toEqual({ kind: 'too-far', id: 'far', nearestM: expect.closeTo(500, -1) });
    expect(outside).toEqual({ kind: 'outside', id: 'outside', nearestM: null });
    expect(fine).toMatchObject({ kind: 'snapped', awayM: expect.closeTo(20, 1) });
  });
});

describe('settings', () => {
  const town: Town = {
    nodes: { ...SQUARE, X: [-500, 0], Y: [1500, 0] },
    ways: [['A B', { highway: 'primary' }], ['B C D A'], ['X A'], ['B Y']],
  };
  const box = (west: number, south: number, east: number, north: number) => ({
    type: 'Polygon' as const,
    coordinates: [[at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)]],
  });

  it('does not drive through an avoided area, but to a place inside', async () => {
    // The area holds no point of the road, only a piece of it.
    const { seconds } = await drive(town, { ...PLAIN, avoid: [box(400, -50, 600, 50)] });
    expect([seconds([-500, 0], [1500, 0]), seconds([-500, 0], [500, 0])]).toEqual([400, 100]);
    const elsewhere = await drive(town, { ...PLAIN, avoid: [box(400, 50, 600, 150)] });
    expect(elsewhere.seconds([-500, 0], [1500, 0])).toBe(200);
  });

  it('minds rules of an avoided area with a hole, and speeds and factors that make no sense', async () => {
    const ring = box(-2000, -2000, 3000, 3000).coordinates[0]!;
    const hole = box(-1900, -1900, 2900, 2900).coordinates[0]!;
    const holed = { type: 'MultiPolygon' as const, coordinates: [[ring, hole]] };
    expect((await drive(town, { ...PLAIN, avoid: [holed] })).seconds([-500, 0], [1500, 0])).toBe(200);
    // A piece of road takes at most a day, and at least a tenth of a second.
    const nothing = { ...PLAIN, speedsKmh: { ...PLAIN.speedsKmh, primary: Number.NaN, residential: 0 } };
    expect((await drive(town, nothing)).seconds([0, 0], [1000, 0])).toBe(3600);
  });

  it('multiplies the seconds of a class by its factor, and leaves turns alone', async () => {
    const { factorsAt, joinFactors, roadNetwork, roadTable, snapPlaces } = await import('../../../core/roads/index.ts');
    const settings: RoadSettings = {
      ...withTurns({ signalSec: 8 }),
      times: [{ name: 'school', fromMin: 420, toMin: 480, factors: { primary: 1.5 } }],
    };
    const map = await mapOf({ ...town, nodes: { ...town.nodes, A: [0, 0, { highway: 'traffic_signals' }] } });
    const seconds = (minute: number, learned = {}): number => {
      const network = roadNetwork(map, settings, joinFactors(factorsAt(settings, minute), learned));
      const table = roadTable(
        network,
        snapPlaces(network, [
          { id: 'x', at: at(-500, 0) },
          { id: 'y', at: at(1500, 0) },
        ]),
      );
      return table.ok ? table.value.durationDs[1]! / 10 : -1;
    };
    expect([seconds(419), seconds(420), seconds(479), seconds(480)]).toEqual([208, 258, 258, 208]);
    expect(seconds(420, { primary: 1.2, residential: 0.9 })).toBe(50 * 0.9 + 8 + 100 * 1.8 + 50 * 0.9);
  });

  it('has a fingerprint that tells maps, settings and factors apart, and hours not', async () => {
    const { roadNetwork } = await import('../../../core/roads/index.ts');
    const map = await mapOf(town);
    const print = (settings: RoadSettings, factors = {}): string => roadNetwork(map, settings, factors).fingerprint;
    const same = print(ROAD_SETTINGS);
    expect(print({ ...ROAD_SETTINGS, times: [{ name: 'x', fromMin: 0, toMin: 1, factors: {} }] })).toBe(same);
    expect(print(PLAIN)).not.toBe(same);
    expect(print(ROAD_SETTINGS, { primary: 1.1 })).not.toBe(same);
    expect(roadNetwork(await mapOf({ ...town, ways: town.ways.slice(1) }), ROAD_SETTINGS).fingerprint).not.toBe(same);
  });
});
