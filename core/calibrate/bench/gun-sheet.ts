import { err, ok, type Result } from '../../base/index.ts';
import { BLANKS, blank } from './blanks.ts';
import { PER_ACRE } from './boom-rules.ts';
import { CARRIER_CHECK_BLANKS, carrierCheck } from './carrier-check.ts';
import { type Entries, type Finding, NO_FINDING, type Rule, type Sheet, type Values } from './sheet.ts';
import { shown } from './shown.ts';
import { SOURCES } from './sources.ts';

/** Hose and gun, or backpack: gallons caught in the time that a course or a square takes. */
export const gunSheet: Sheet = {
  kind: 'gun',
  words: 'hose and gun or backpack: gallons caught in a bucket in the time that a measured course or square takes',
  blanks: [
    blank(
      'advance-ft',
      'length',
      'width gained with each pass, ft: half of what is seen where each pass goes back to the middle of the one before',
      { most: 60 },
    ),
    blank(
      'seen-ft',
      'length',
      'width that the spray is seen to cover, ft, sprayed back to the middle of the pass before',
      { most: 60 },
    ),
    ...[BLANKS.courseFt, BLANKS.areaSqFt, BLANKS.seconds],
    blank('caught-gal', 'volume', 'caught in the bucket in that time, gal', { most: 200 }),
    ...[BLANKS.gpm, BLANKS.galPer1000, BLANKS.gpa, BLANKS.minutesPer1000],
    ...CARRIER_CHECK_BLANKS,
  ],
  rules,
  before,
  after: carrierCheck,
};

function rules(entries: Entries): readonly Rule[] {
  return [
    { left: 'area-ft2', factor: 1, above: ['course-ft', 'advance-ft'], below: [], source: SOURCES.buhler },
    { left: 'gal-per-1000', factor: 1000, above: ['caught-gal'], below: ['area-ft2'], source: SOURCES.buhler },
    PER_ACRE,
    { left: 'caught-gal', factor: 1, over: 60, above: ['gpm', 'seconds'], below: [], source: SOURCES.arithmetic },
    ...(entries.values.seconds === undefined
      ? [{ left: 'gal-per-1000', factor: 1, above: ['gpm', 'minutes-per-1000'], below: [], source: SOURCES.arithmetic }]
      : []),
    {
      left: 'minutes-per-1000',
      factor: 1000,
      over: 60,
      above: ['seconds'],
      below: ['area-ft2'],
      source: SOURCES.buhler,
    },
  ];
}

function before({ values }: Entries): Result<Finding> {
  const width = advance(values['advance-ft'], values['seen-ft']);
  if (!width.ok) return width;
  const hasGround = values['course-ft'] !== undefined || values['area-ft2'] !== undefined;
  const hasWidth = values['advance-ft'] !== undefined || values['seen-ft'] !== undefined;
  if (hasGround || !hasWidth || groundIsAsked(values)) return width;
  const words = 'area-ft2: no course is given, so the walk is one that covers 1,000 ft²';
  return ok({
    ...width.value,
    values: { ...width.value.values, 'area-ft2': 1000 },
    lines: [...width.value.lines, words],
    sources: [...width.value.sources, SOURCES.buhler],
  });
}

/** The caught gallons and a rate, or the time of the walk and of 1,000 ft², tell the ground by themselves. */
function groundIsAsked(values: Values): boolean {
  const knows = (...names: readonly string[]): boolean => names.some((name) => values[name] !== undefined);
  const caught = knows('caught-gal') || (knows('gpm') && knows('seconds'));
  return (caught && knows('gpa', 'gal-per-1000')) || (knows('seconds') && knows('minutes-per-1000'));
}

/** The trap of the width: with the full one the ground would get twice the rate that is found. */
function advance(advanceFt: number | undefined, seenFt: number | undefined): Result<Finding> {
  if (seenFt === undefined) return ok(NO_FINDING);
  if (advanceFt !== undefined && advanceFt > seenFt) {
    return err('request-invalid', 'advance-ft', 'A pass cannot gain more than the spray covers.', 'Check both widths.');
  }
  const gained = advanceFt ?? seenFt / 2;
  const times = shown(seenFt / gained);
  return ok({
    values: { 'advance-ft': gained },
    lines: [
      `advance-ft: the spray covers ${shown(seenFt)} ft and a pass gains ${shown(gained)} ft, so the ground is sprayed ${times} times; with the full width the rate would come out as 1/${times} of the real one`,
    ],
    used: ['seen-ft', 'advance-ft'],
    sources: [SOURCES.buhler],
  });
}
