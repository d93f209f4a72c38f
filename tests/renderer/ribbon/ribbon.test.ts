import { describe, expect, test } from 'vitest';
import { readingOf } from '../../../core/book/index.ts';
import { formatterFor } from '../../../renderer/format/index.ts';
import {
  cursorWords,
  dayEvents,
  eventIndexAt,
  eventWords,
  homeSec,
  layoutRibbon,
  levelAt,
  levelPaths,
  momentWords,
  nextMoment,
  RIBBON_KEYS,
  stopAt,
  stopNumberOf,
  timeScale,
  timeTicks,
} from '../../../renderer/ribbon/index.ts';
import { at, SMALL_DAY } from '../small-day.ts';

const words = formatterFor(readingOf({ units: 'us' }));
const tank = SMALL_DAY.levels[0]!;

describe('time scale', () => {
  test('its ends lie on the half hours around the day', () => {
    const scale = timeScale(at('7:10'), at('11:45'), 100, 600);
    expect([scale.startSec, scale.endSec]).toEqual([at('7:00'), at('12:00')]);
    // Five hours over 500 px: 100 px an hour.
    expect(scale.toX(at('9:00'))).toBeCloseTo(300, 9);
    expect(scale.toSec(350)).toBeCloseTo(at('9:30'), 6);
  });

  test('what lies outside stays at the ends', () => {
    const scale = timeScale(at('7:00'), at('12:00'), 100, 600);
    expect(scale.toX(at('5:00'))).toBe(100);
    expect(scale.toX(at('20:00'))).toBe(600);
  });

  test('a day without length still has a scale', () => {
    const scale = timeScale(at('7:00'), at('7:00'), 0, 100);
    expect(scale.endSec - scale.startSec).toBe(1800);
  });

  test('ticks keep at least 72 px apart, room for "12:00 pm"', () => {
    // 100 px an hour: half hours are 50 px apart, too near; hours are 100 px.
    expect(timeTicks(timeScale(at('7:00'), at('12:00'), 0, 500)).map((tick) => tick.sec)).toEqual(
      ['7:00', '8:00', '9:00', '10:00', '11:00', '12:00'].map(at),
    );
    // 60 px an hour: two labels like "10:00 am" would touch; every two hours.
    expect(timeTicks(timeScale(at('7:00'), at('12:00'), 0, 300)).map((tick) => tick.sec)).toEqual(
      ['8:00', '10:00', '12:00'].map(at),
    );
    // 40 px an hour: every two hours, on even hours.
    expect(timeTicks(timeScale(at('7:00'), at('12:00'), 0, 200)).map((tick) => tick.sec)).toEqual(
      ['8:00', '10:00', '12:00'].map(at),
    );
  });
});

describe('levels', () => {
  test('are read between the points by straight lines', () => {
    expect(levelAt(tank, at('8:15'))).toBeCloseTo(10, 9);
    expect(levelAt(tank, at('8:35'))).toBeCloseTo(10, 9);
    expect(levelAt(tank, at('8:50'))).toBeCloseTo(15, 9);
  });

  test('before the first and after the last point stay as they are', () => {
    expect(levelAt(tank, at('5:00'))).toBe(20);
    expect(levelAt(tank, at('20:00'))).toBe(10);
    expect(levelAt({ ...tank, points: [] }, at('8:00'))).toBe(0);
  });

  test('at a jump the later value counts', () => {
    const line = {
      ...tank,
      points: [[0, 5] as [number, number], [100, 0] as [number, number], [100, 20] as [number, number]],
    };
    expect(levelAt(line, 100)).toBe(20);
    expect(levelAt(line, 99.9)).toBeCloseTo(0.005, 6);
  });

  test('are drawn from full at the top to empty at the bottom of the lane', () => {
    const scale = timeScale(at('7:00'), at('12:00'), 0, 500);
    const { line, area } = levelPaths(tank, scale, 10, 40);
    // 8:00 is 100 px, full (y 10); 8:30 is 150 px, empty (y 50); 9:00 is 200 px, half (y 30).
    expect(line.startsWith('M0,10L100,10L150,50')).toBe(true);
    expect(line).toContain('L200,30');
    expect(area.endsWith('L475,50L0,50Z')).toBe(true);
  });
});

describe('events of a day', () => {
  const events = dayEvents(SMALL_DAY);

  test('come in the order of time, with every stop and refill', () => {
    expect(events.map((event) => [event.kind, event.sec])).toEqual([
      ['shift-starts', at('7:00')],
      ['leaves', at('7:30')],
      ['arrives', at('8:00')],
      ['refills', at('8:30')],
      ['pauses', at('9:00')],
      ['arrives', at('10:00')],
      ['home', at('11:30')],
    ]);
  });

  test('home is the end of the last drive, not of the paid day', () => {
    expect(homeSec(SMALL_DAY)).toBe(at('11:30'));
    expect(homeSec({ ...SMALL_DAY, activities: [] })).toBe(at('11:45'));
  });

  test('waiting is an event, and a block of its own within the stop', () => {
    const [first] = SMALL_DAY.stops;
    const waiting = {
      ...SMALL_DAY,
      activities: [...SMALL_DAY.activities, { kind: 'wait' as const, startSec: at('8:00'), endSec: at('8:12') }],
    };
    expect(dayEvents(waiting).map((event) => eventWords(event, words))).toContain('8:00 am waits until 8:12 am');
    const blocks = layoutRibbon(waiting, 800, 200).blocks;
    const wait = blocks.find((block) => block.kind === 'wait');
    const stop = blocks.find((block) => block.kind === 'stop' && block.stopNumber === first?.number);
    expect((wait?.x ?? 0) + (wait?.width ?? 0)).toBeCloseTo(stop?.x ?? 0, 6);
  });

  test('every moment has its stop: the one there, or the next one; none on the way home', () => {
    expect(
      ['7:05', '8:30', '9:10', '10:30', '11:20'].map((clock) => stopAt(SMALL_DAY, at(clock))?.number ?? null),
    ).toEqual([1, 1, 2, 2, null]);
  });

  test('a refill knows its stop', () => {
    const refill = SMALL_DAY.activities.find((each) => each.kind === 'refill')!;
    expect(stopNumberOf(SMALL_DAY, refill)).toBe(1);
    expect(stopNumberOf(SMALL_DAY, { ...refill, propertyId: 'elsewhere' })).toBe(0);
  });

  test('the event at a moment is the last one before it', () => {
    expect(eventIndexAt(events, at('8:29'))).toBe(2);
    expect(eventIndexAt(events, at('8:30'))).toBe(3);
    expect(eventIndexAt(events, at('3:00'))).toBe(0);
  });
});

describe('keys on the ribbon', () => {
  const events = dayEvents(SMALL_DAY);

  test('step to the next and the previous event', () => {
    expect(nextMoment('ArrowRight', events, at('8:00'))).toBe(at('8:30'));
    expect(nextMoment('ArrowLeft', events, at('8:30'))).toBe(at('8:00'));
    // Between two events the first step back goes to the event that has just been.
    expect(nextMoment('ArrowLeft', events, at('8:45'))).toBe(at('8:30'));
  });

  test('are those that it names for the page of keys', () => {
    for (const key of RIBBON_KEYS) expect(nextMoment(key, events, at('9:00')), key).not.toBeUndefined();
    expect(nextMoment('Tab', events, at('9:00'))).toBeUndefined();
  });

  test('stay at the ends', () => {
    expect(nextMoment('ArrowRight', events, at('11:30'))).toBe(at('11:30'));
    expect(nextMoment('ArrowLeft', events, at('7:00'))).toBe(at('7:00'));
    expect(nextMoment('Home', events, at('9:00'))).toBe(at('7:00'));
    expect(nextMoment('End', events, at('9:00'))).toBe(at('11:30'));
  });

  test('Escape takes the cursor away and other keys are left alone', () => {
    expect(nextMoment('Escape', events, at('9:00'))).toBeNull();
    expect(nextMoment('a', events, at('9:00'))).toBeUndefined();
  });
});

describe('words', () => {
  test('tell each event with its figures', () => {
    const told = dayEvents(SMALL_DAY).map((event) => eventWords(event, words));
    expect(told).toContain('8:00 am stop 1, First Lawn');
    expect(told).toContain('8:30 am refill from the rig, in stop 1 after 40,000 ft², 20.0 gal: The tank runs dry.');
    expect(told).toContain('9:00 am break until 9:30 am');
    expect(told).toContain('11:30 am home');
  });

  test('tell every level at a moment', () => {
    expect(momentWords(SMALL_DAY, at('8:15'), words)).toBe(
      '8:15 am, since 8:00 am stop 1, First Lawn. Machine, tank 10.0 gal, Nurse tank 50.0 gal',
    );
    expect(momentWords(SMALL_DAY, at('8:00'), words)).toMatch(/^8:00 am stop 1, First Lawn\. /);
  });

  test('are none without a cursor', () => {
    expect(cursorWords(SMALL_DAY, null, words)).toBe('');
    expect(cursorWords(SMALL_DAY, at('9:10'), words)).toBe('9:00 am break until 9:30 am');
  });
});

describe('layout', () => {
  const layout = layoutRibbon(SMALL_DAY, 1000, 200);

  test('puts every stop, the break and the work at the shop on the row of blocks', () => {
    expect(layout.blocks.map((block) => `${block.kind} ${block.label}`)).toEqual([
      'yard load',
      'stop 1',
      'break break',
      'stop 2',
      'yard ',
    ]);
    const first = layout.blocks.find((block) => block.stopNumber === 1)!;
    expect(first.x).toBeCloseTo(layout.scale.toX(at('8:00')), 9);
    expect(first.x + first.width).toBeCloseTo(layout.scale.toX(at('9:00')), 9);
  });

  test('a stop is split around a break and a visit to a fill point in it, and the longest piece bears its number', () => {
    const refill = SMALL_DAY.activities.find((each) => each.kind === 'refill')!;
    const fill = { ...refill, startSec: at('8:40'), endSec: at('8:45'), fillPointId: 'hydrant' };
    const pause = { kind: 'break' as const, startSec: at('8:10'), endSec: at('8:20') };
    const { blocks, scale } = layoutRibbon({ ...SMALL_DAY, activities: [fill, pause] }, 1000, 200);
    // Stop 1 lasts from 8:00 to 9:00: 10, 20 and 15 minutes are left of it.
    expect(blocks.slice(0, 5).map((block) => [block.kind, block.startSec, block.label])).toEqual([
      ['stop', at('8:00'), ''],
      ['break', at('8:10'), 'break'],
      ['stop', at('8:20'), '1'],
      ['fill-point', at('8:40'), 'fill'],
      ['stop', at('8:45'), ''],
    ]);
    expect(blocks[2]!.x).toBeCloseTo(scale.toX(at('8:20')), 9);
    expect(blocks[2]!.x + blocks[2]!.width).toBeCloseTo(scale.toX(at('8:40')), 9);
    for (const [index, block] of blocks.slice(0, 5).entries()) {
      expect(block.x + block.width).toBeLessThanOrEqual(blocks[index + 1]!.x + 1e-9);
    }
  });

  test('a break at the start of a stop takes its part away, and a stop of no length stays', () => {
    const pause = { kind: 'break' as const, startSec: at('8:00'), endSec: at('8:30') };
    const first = { ...SMALL_DAY.stops[0]!, tasks: [] };
    const none = { ...SMALL_DAY.stops[1]!, leaveSec: SMALL_DAY.stops[1]!.arriveSec };
    const { blocks } = layoutRibbon({ ...SMALL_DAY, stops: [first, none], activities: [pause] }, 1000, 200);
    expect(blocks.map((block) => [block.kind, block.startSec, block.label])).toEqual([
      ['break', at('8:00'), 'break'],
      ['stop', at('8:30'), '1'],
      ['stop', at('10:00'), '2'],
    ]);
    expect(blocks[2]!.width).toBe(1);
  });

  test('lanes lie below the blocks, do not touch, and fit the room there is', () => {
    const [upper, lower] = layout.lanes;
    expect(upper!.top).toBeGreaterThanOrEqual(layout.blockTop + layout.blockHeight);
    expect(lower!.top).toBeGreaterThanOrEqual(upper!.top + upper!.height);
    expect(layout.height).toBeLessThanOrEqual(200);
  });

  test('lanes keep a readable height where there is too little room, and the drawing grows', () => {
    const crowded = layoutRibbon({ ...SMALL_DAY, levels: Array.from({ length: 9 }, () => tank) }, 1000, 150);
    for (const lane of crowded.lanes) expect(lane.height).toBeGreaterThanOrEqual(22);
    expect(crowded.height).toBeGreaterThan(150);
  });

  test('the home line stands where the last drive ends', () => {
    expect(layout.homeX).toBeCloseTo(layout.scale.toX(at('11:30')), 9);
  });
});
