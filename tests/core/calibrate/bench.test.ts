import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  acresPerHour,
  catchPlot,
  catchPlotCourseFt,
  effectiveSwathFt,
  efficiencyFromJob,
  flowAtPressure,
  gallonsOnArea,
  gallonsPerAcre,
  gallonsPerMinute,
  handGunCatch,
  hectaresPerHour,
  minutesForArea,
  ouncesPerMinute,
  per1000SqFt,
  perAcre,
  pressureForFlow,
  rateFromRun,
  secondsForCourse,
  speedForCapacity,
  speedForRate,
  speedFromCourse,
  weighBack,
} from '../../../core/calibrate/index.ts';

const figure = fc.double({ min: 0.01, max: 1000, noNaN: true });

describe('formulas that undo each other', () => {
  it('flow and rate', () => {
    fc.assert(
      fc.property(figure, figure, figure, (gpm, mph, widthIn) => {
        const back = gallonsPerMinute(gallonsPerAcre(gpm, mph, widthIn), mph, widthIn);
        expect(back / gpm).toBeCloseTo(1, 12);
      }),
    );
  });

  it('per acre and per 1,000 ft2; pressure and flow; speed and seconds; capacity and speed', () => {
    fc.assert(
      fc.property(figure, figure, figure, (first, second, third) => {
        expect(perAcre(per1000SqFt(first)) / first).toBeCloseTo(1, 12);
        expect(pressureForFlow(second, first, flowAtPressure(first, second, third)) / third).toBeCloseTo(1, 9);
        const speed = speedFromCourse(first, secondsForCourse(first, second));
        expect(speed.ok && speed.value / second).toBeCloseTo(1, 9);
        expect(acresPerHour(speedForCapacity(first, second, 0.6), second, 0.6) / first).toBeCloseTo(1, 9);
      }),
    );
  });

  it('the efficiency of a job whose minutes came from an efficiency', () => {
    const minutes = minutesForArea(30_000, acresPerHour(4, 6, 0.55));
    expect(efficiencyFromJob(30_000, minutes, 4, 6)).toBeCloseTo(0.55, 12);
  });

  it('the metric capacity is the same ground', () => {
    const hectares = hectaresPerHour(5 * 1.609344, 10 * 0.3048, 0.7);
    expect(hectares / 0.40468564224).toBeCloseTo(acresPerHour(5, 10, 0.7), 10);
  });

  it('ounces a minute and gallons on an area', () => {
    expect(ouncesPerMinute(0.25)).toBe(32);
    expect(gallonsOnArea(2, 13_000)).toBe(26);
  });

  it('driving at the speed that matches a rate gives that rate', () => {
    fc.assert(
      fc.property(figure, figure, figure, (mph, delivered, wanted) => {
        const flow = gallonsPerMinute(delivered, mph, 20);
        expect(gallonsPerAcre(flow, speedForRate(mph, delivered, wanted), 20) / wanted).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('the 1/128-acre catch', () => {
  it('scales a course of the wrong length', () => {
    const courseFt = catchPlotCourseFt(20) * 2;
    const result = catchPlot({ widthIn: 20, courseFt, caughtOunces: [40, 40] });
    expect(result.ok && result.value.rate).toBeCloseTo(20, 10);
  });

  it('tells even tips from those to watch and to replace', () => {
    const result = catchPlot({ widthIn: 20, courseFt: 204, caughtOunces: [20, 20, 20, 20, 18.8, 23] });
    expect(result.ok && result.value.tips.map((each) => each.verdict)).toEqual([
      'even',
      'even',
      'even',
      'even',
      'watch',
      'replace',
    ]);
  });

  it('agrees with a volume run over the same ground', () => {
    // 20 fl oz from each of 6 tips 20 in apart over 204.1875 ft: 120 fl oz on 10 ft x 204.1875 ft.
    const caught = catchPlot({ widthIn: 20, courseFt: 204.1875, caughtOunces: Array(6).fill(20) });
    const run = rateFromRun(120 / 128, 204.1875, 10);
    expect(caught.ok && run.ok && caught.value.rate / run.value).toBeCloseTo(1, 12);
  });
});

describe('spreader tests', () => {
  it('finds pounds per 1,000 ft2 by weighing back', () => {
    const rate = weighBack({ swathFt: 10, courseFt: 200, beforeLb: 60, afterLb: 51.6 });
    expect(rate.ok && rate.value).toBeCloseTo(4.2, 10);
  });

  it('finds the effective swath between the half-catch points, left and right apart', () => {
    // Middle 20, half is 10: left between pans 2 and 3 (12 to 8: half way), right at pan 4 exactly.
    const swath = effectiveSwathFt([2, 8, 12, 18, 20, 19, 17, 14, 10], 1);
    expect(swath.ok && swath.value).toBeCloseTo(2.5 + 4, 12);
  });

  it('mirrored pans give the same swath, and wider spacing a wider one', () => {
    const row = [1, 4, 9, 14, 20, 15, 8, 3, 0];
    const once = effectiveSwathFt(row, 1);
    const mirrored = effectiveSwathFt([...row].reverse(), 1);
    const wider = effectiveSwathFt(row, 1.5);
    if (!once.ok || !mirrored.ok || !wider.ok) throw new Error('a good row was refused');
    expect(mirrored.value).toBeCloseTo(once.value, 12);
    expect(wider.value).toBeCloseTo(once.value * 1.5, 12);
  });

  it('refuses a row without middle, one that stays above half, and one that caught nothing', () => {
    for (const row of [[1, 2, 2, 1], [5], [18, 19, 20, 19, 18], [0, 0, 0]]) {
      const result = effectiveSwathFt(row, 1);
      expect(result.ok).toBe(false);
      expect(!result.ok && result.error.code).toBe('quantity-out-of-range');
    }
  });
});

describe('figures that cannot be right are refused by name', () => {
  it.each([
    ['speed', () => speedFromCourse(200, 0), 'time, s'],
    ['hand gun without a walk', () => handGunCatch({ advanceFt: 5, walksSec: [], caughtGal: 2 }), 'mean time, s'],
    ['hand gun', () => handGunCatch({ advanceFt: 5, walksSec: [70, -1], caughtGal: 2 }), 'walk 2, s'],
    ['catch', () => catchPlot({ widthIn: 20, courseFt: 204, caughtOunces: [] }), 'mean catch, fl oz'],
    ['run', () => rateFromRun(Number.NaN, 660, 30), 'used, gal'],
    ['weigh-back', () => weighBack({ swathFt: 10, courseFt: 100, beforeLb: 40, afterLb: 41 }), 'material gone, lb'],
  ])('%s', (_, run, place) => {
    const result = run();
    if (result.ok) throw new Error('was accepted');
    expect(result.error.code).toBe('quantity-out-of-range');
    expect(result.error.where).toContain(place);
  });
});
