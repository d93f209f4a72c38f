import { SQUARE_FEET_PER_ACRE } from '../../units/index.ts';
import type { Rule } from './sheet.ts';
import { SOURCES } from './sources.ts';

/** Rules of tips on a boom that several sheets share. */

export const RATE_OF_TIP: Rule = {
  left: 'gpa',
  factor: 5940,
  above: ['gpm'],
  below: ['mph', 'spacing-in'],
  source: SOURCES.cornellGuide,
};

export const PER_ACRE: Rule = {
  left: 'gpa',
  factor: 43.56,
  above: ['gal-per-1000'],
  below: [],
  source: SOURCES.gerken,
};

export const NEW_PER_ACRE: Rule = { ...PER_ACRE, left: 'new-gpa', above: ['new-gal-per-1000'] };

export const PRESSURE: Rule = {
  left: 'new-psi',
  factor: 1,
  above: ['psi', 'new-gpm', 'new-gpm'],
  below: ['gpm', 'gpm'],
  source: SOURCES.coreManual,
};

export const NEW_RATE_OF_TIP: Rule = { ...RATE_OF_TIP, left: 'new-gpa', above: ['new-gpm'] };

/** s = 60 x ft / (88 x mph): 1 mph is 88 ft a minute. */
export const COURSE_SPEED: Rule = {
  left: 'seconds',
  factor: 60,
  over: 88,
  above: ['course-ft'],
  below: ['mph'],
  source: SOURCES.cornellBoom,
};

export const PRODUCT_PER_ACRE: Rule = {
  left: 'lb-per-acre',
  factor: 43.56,
  above: ['lb-per-1000'],
  below: [],
  source: SOURCES.gerken,
};

export const RUN_RATE: Rule = {
  left: 'gpa',
  factor: SQUARE_FEET_PER_ACRE,
  above: ['used-gal'],
  below: ['course-ft', 'swath-ft'],
  source: SOURCES.florida,
};
