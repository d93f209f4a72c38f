import { err, ok, type Result } from '../../base/index.ts';
import { TIP_SIZES, type TipSize } from '../tips.ts';
import { BLANKS, blank } from './blanks.ts';
import { NEW_RATE_OF_TIP, PER_ACRE, PRESSURE, RATE_OF_TIP } from './boom-rules.ts';
import { CARRIER_CHECK_BLANKS } from './carrier-check.ts';
import { type Blank, type Entries, type Finding, NO_FINDING, type Sheet, type Values } from './sheet.ts';
import { shown } from './shown.ts';
import { SOURCES } from './sources.ts';

const psiLimit = { unit: 'psi', most: 1000 };

/** Blanks of the choice of tips; the limits of pressure also hold a pressure against what the maker states. */
const WISH_BLANKS: readonly Blank[] = [
  blank('least-psi', 'number', 'least pressure that the tip may have, psi', psiLimit),
  blank('most-psi', 'number', 'most pressure that the tip may have, psi', psiLimit),
  CARRIER_CHECK_BLANKS[0],
  blank('want-gpa', 'gal-per-acre', 'wanted carrier rate, gal per acre'),
  blank('least-mph', 'speed', 'least speed, mph'),
  blank('most-mph', 'speed', 'most speed, mph'),
  blank('step-mph', 'speed', 'speeds looked at stand this far apart, 0.5 mph where it is not said'),
];

const GPM_AT_40 = 'gpm-at-40-psi';

/** Flow of a tip by its size and pressure, and with speed and spacing the carrier rate. */
export const tipSheet: Sheet = {
  kind: 'tip',
  words:
    'flow of a tip by size and pressure; with --want-gal-per-1000 or --want-gpa the sizes, pressures and speeds that give it',
  blanks: [
    blank(GPM_AT_40, 'flow', 'flow of the tip at 40 psi, gal/min: the size'),
    ...[BLANKS.psi, BLANKS.gpm, BLANKS.newPsi, BLANKS.newGpm],
    ...[BLANKS.spacingIn, BLANKS.mph, BLANKS.gpa, BLANKS.galPer1000, BLANKS.newGpa],
    ...WISH_BLANKS,
  ],
  rules: () => [
    PER_ACRE,
    RATE_OF_TIP,
    { left: 'psi', factor: 40, above: ['gpm', 'gpm'], below: [GPM_AT_40, GPM_AT_40], source: SOURCES.coreManual },
    PRESSURE,
    NEW_RATE_OF_TIP,
  ],
  before: sizeEntered,
  after: tipChecked,
};

/** The tip of a size, "03" or "3"; 'request-invalid' where the table has none such. */
export function tipOfSize(size: string): Result<TipSize> {
  const found = TIP_SIZES.find((each) => each.size === size || each.size === `0${size}`);
  if (found !== undefined) return ok(found);
  const sizes = TIP_SIZES.map((each) => each.size).join(', ');
  return err('request-invalid', 'size', `There is no tip size "${size}".`, `Sizes: ${sizes}.`);
}

function sizeEntered({ tipSize, values }: Entries): Result<Finding> {
  if (tipSize === undefined) return ok(NO_FINDING);
  if (values[GPM_AT_40] !== undefined) {
    return err('request-invalid', 'size', `Both the size and ${GPM_AT_40} are given.`, 'Give one of them.');
  }
  const tip = tipOfSize(tipSize);
  if (!tip.ok) return tip;
  const { size, colour, gpmAt40Psi } = tip.value;
  return ok({
    values: { [GPM_AT_40]: gpmAt40Psi },
    lines: [`size ${size}, ${colour}: ${shown(gpmAt40Psi)} gal/min at 40 psi`],
    used: [],
    sources: [SOURCES.arizona],
  });
}

function tipChecked(values: Values, entries: Entries): Result<Finding> {
  const used = ['least-psi', 'most-psi'].filter((name) => values[name] !== undefined);
  const { 'least-psi': least = 0, 'most-psi': most = Number.MAX_VALUE } = values;
  for (const name of ['psi', 'new-psi']) {
    const psi = values[name];
    if (psi === undefined || (psi >= least && psi <= most)) continue;
    const detail = `${name} is ${shown(psi)} psi, outside the range of the tip.`;
    const range = most === Number.MAX_VALUE ? `${shown(least)} psi or more` : `${shown(least)} to ${shown(most)} psi`;
    return err('quantity-out-of-range', name, detail, `Stay at ${range}: take another size or speed.`);
  }
  const sizes = sizeFound(values, entries);
  return ok({ ...sizes, used });
}

/** Names the sizes on both sides of a flow that was worked out. */
function sizeFound(values: Values, { tipSize }: Entries): Finding {
  const flow = values[GPM_AT_40];
  if (tipSize !== undefined || flow === undefined) return NO_FINDING;
  const sorted = TIP_SIZES.toSorted(
    (left, right) => Math.abs(left.gpmAt40Psi - flow) - Math.abs(right.gpmAt40Psi - flow),
  );
  const words = sorted.slice(0, 2).map((each) => `${each.size} (${each.colour}, ${shown(each.gpmAt40Psi)} gal/min)`);
  return { ...NO_FINDING, lines: [`nearest sizes: ${words.join(', ')}`], sources: [SOURCES.arizona] };
}
