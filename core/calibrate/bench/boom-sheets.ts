import { BLANKS } from './blanks.ts';
import { COURSE_SPEED, NEW_PER_ACRE, NEW_RATE_OF_TIP, PER_ACRE, PRESSURE, RATE_OF_TIP } from './boom-rules.ts';
import { CARRIER_CHECK_BLANKS, carrierCheck } from './carrier-check.ts';
import type { Sheet } from './sheet.ts';
import { SOURCES } from './sources.ts';

const { gpm, mph, spacingIn, gpa, galPer1000, psi, newPsi, newGpm, newGpa, newGalPer1000 } = BLANKS;

/** Flow, speed, spacing and carrier rate of a boom, one tip or all of them, and the same at another pressure. */
export const boomSheet: Sheet = {
  kind: 'boom',
  words: 'flow of the tips, speed, spacing or swath, and carrier rate; the same at another pressure',
  blanks: [
    ...[gpm, BLANKS.ouncesPerMinute, BLANKS.totalGpm, BLANKS.tips, spacingIn, BLANKS.swathFt, mph, gpa, galPer1000],
    ...[psi, newPsi, newGpm, newGpa, newGalPer1000],
    ...CARRIER_CHECK_BLANKS,
  ],
  rules: () => [
    { left: 'oz-per-min', factor: 128, above: ['gpm'], below: [], source: SOURCES.albany },
    { left: 'swath-ft', factor: 1, over: 12, above: ['spacing-in', 'tips'], below: [], source: SOURCES.arithmetic },
    { left: 'total-gpm', factor: 1, above: ['gpm', 'tips'], below: [], source: SOURCES.arithmetic },
    PER_ACRE,
    RATE_OF_TIP,
    { left: 'gpa', factor: 495, above: ['total-gpm'], below: ['mph', 'swath-ft'], source: SOURCES.mesa },
    NEW_PER_ACRE,
    PRESSURE,
    { ...PRESSURE, above: ['psi', 'new-gpa', 'new-gpa'], below: ['gpa', 'gpa'] },
    NEW_RATE_OF_TIP,
  ],
  after: carrierCheck,
};

/** Speed over a timed course, and what another speed does to the rate while the pressure stays. */
export const speedSheet: Sheet = {
  kind: 'speed',
  words: 'speed over a timed course; the rate at another speed, or the speed for another rate, at the same pressure',
  blanks: [BLANKS.courseFt, BLANKS.seconds, mph, gpa, galPer1000, BLANKS.newMph, newGpa, newGalPer1000],
  rules: () => [
    COURSE_SPEED,
    PER_ACRE,
    NEW_PER_ACRE,
    { left: 'new-mph', factor: 1, above: ['mph', 'gpa'], below: ['new-gpa'], source: SOURCES.novaScotia },
  ],
};
