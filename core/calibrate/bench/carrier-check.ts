import { ok, type Result } from '../../base/index.ts';
import { acceptableRates } from '../spreader.ts';
import { blank } from './blanks.ts';
import { type Finding, NO_FINDING, type Values } from './sheet.ts';
import { percent, shown } from './shown.ts';
import { SOURCES } from './sources.ts';

const WANTED = 'want-gal-per-1000';
const MATCHING = 'matching-mph';

/** The carrier rate of the mix, against which a delivered rate is held, and the speed that would match it. */
export const CARRIER_CHECK_BLANKS = [
  blank(WANTED, 'gal-per-1000', 'wanted carrier rate, gal per 1,000 ft²: in tip lists what gives it'),
  blank(MATCHING, 'speed', 'speed at which the wanted rate comes out, pressure unchanged', { onlyFound: true }),
] as const;

/**
 * Holds the delivered rate against the wanted one: 5 % either side passes. A tank mixed by its recipe holds the same product
 * in each gallon, so every product rate is off by the same share.
 */
export function carrierCheck(values: Values): Result<Finding> {
  const wanted = values[WANTED];
  const found = values['gal-per-1000'];
  if (wanted === undefined || found === undefined) return ok(NO_FINDING);
  const { least, most } = acceptableRates(wanted);
  const passes = found >= least && found <= most;
  const off = `${percent(Math.abs(found / wanted - 1))} ${found < wanted ? 'under' : 'over'}`;
  const products = passes ? 'accepted' : `every product comes to ${percent(found / wanted)} of its rate`;
  const line = `wanted ${shown(wanted)}: ${shown(least)} to ${shown(most)} gal/1000ft2 passes; ${shown(found)} is ${off}: ${products}`;
  const speed = matchingSpeed(values.mph, found, wanted);
  return ok({ ...speed, lines: [line, ...speed.lines], used: [WANTED], sources: [SOURCES.buhler, ...speed.sources] });
}

function matchingSpeed(mph: number | undefined, found: number, wanted: number): Finding {
  if (mph === undefined) return NO_FINDING;
  const value = (mph * found) / wanted;
  const words = `${MATCHING} = mph × gal-per-1000 / ${WANTED}`;
  const line = `${words} = ${shown(mph)} × ${shown(found)} / ${shown(wanted)} = ${shown(value)} mph`;
  return { values: { [MATCHING]: value }, lines: [line], used: [], sources: [SOURCES.novaScotia] };
}
