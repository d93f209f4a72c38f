import { err, ok, type Result } from '../base/index.ts';
import { gallonsPerAcre, gallonsPerMinute, per1000SqFt, perAcre } from './boom.ts';
import { allPositive } from './positive.ts';
import { type TipSize, tipFlow } from './tips.ts';

/** What a boom should put out, and the limits of machine and tips. */
export type TipWish = {
  readonly wantedGalPer1000SqFt: number;
  readonly spacingIn: number;
  readonly tips: readonly TipSize[];
  readonly leastPsi: number;
  readonly mostPsi: number;
  readonly leastMph: number;
  readonly mostMph: number;
  /** Speeds looked at stand this far apart, from the least on; the most is always among them. mph */
  readonly stepMph: number;
};

/** A tip, a whole pressure as a gauge shows it, a speed, and what they give. */
export type TipCombination = {
  readonly size: string;
  readonly colour: string;
  readonly psi: number;
  readonly mph: number;
  /** Flow of one tip, gal/min. */
  readonly gpm: number;
  readonly galPer1000SqFt: number;
  readonly gpa: number;
  /** Share off the wanted rate: 0.02 is 2 % above. */
  readonly difference: number;
};

/** Speeds that are looked at, at most. */
const MOST_SPEEDS = 1000;

/**
 * Tips, pressures and speeds within the limits, the one nearest to the wanted rate first. For each tip and speed the pressure
 * is the one that gives the rate (flow grows with its square root), rounded to a whole psi and kept within the limits.
 * Nothing is said of droplets: their class is the maker's to state.
 *
 * @returns quantity-out-of-range where a figure is not above zero, a least is above its most or there is no tip
 */
export function tipCombinations(wish: TipWish): Result<readonly TipCombination[]> {
  const checked = checkWish(wish);
  if (!checked.ok) return checked;
  const speeds = speedsOf(wish);
  const all = wish.tips.flatMap((tip) => speeds.map((mph) => combination(wish, tip, mph)));
  return ok(all.toSorted((left, right) => Math.abs(left.difference) - Math.abs(right.difference)));
}

function checkWish(wish: TipWish): Result<null> {
  const checked = allPositive('choice of tips', [
    { name: 'wanted rate, gal per 1,000 ft²', value: wish.wantedGalPer1000SqFt },
    { name: 'spacing, in', value: wish.spacingIn },
    { name: 'least pressure, psi', value: wish.leastPsi },
    { name: 'most pressure, psi', value: wish.mostPsi },
    { name: 'least speed, mph', value: wish.leastMph },
    { name: 'most speed, mph', value: wish.mostMph },
    { name: 'step of speed, mph', value: wish.stepMph },
    { name: 'number of tips', value: wish.tips.length },
  ]);
  if (!checked.ok) return checked;
  if (wish.leastPsi > wish.mostPsi) return crossed('pressure', wish.leastPsi, wish.mostPsi, 'psi');
  if (wish.leastMph > wish.mostMph) return crossed('speed', wish.leastMph, wish.mostMph, 'mph');
  if ((wish.mostMph - wish.leastMph) / wish.stepMph <= MOST_SPEEDS) return ok(null);
  const detail = `Steps of ${wish.stepMph} mph make more than ${MOST_SPEEDS} speeds.`;
  return err('quantity-out-of-range', 'choice of tips, step of speed', detail, 'Take longer steps.');
}

function crossed(noun: string, least: number, most: number, unit: string): Result<null> {
  const detail = `The least ${noun}, ${least} ${unit}, is above the most, ${most} ${unit}.`;
  return err('quantity-out-of-range', `choice of tips, ${noun}`, detail, 'Exchange them.');
}

function speedsOf({ leastMph, mostMph, stepMph }: TipWish): readonly number[] {
  const steps = Math.floor((mostMph - leastMph) / stepMph + 1e-9);
  const speeds = Array.from({ length: steps + 1 }, (_, step) => Number((leastMph + step * stepMph).toFixed(6)));
  const last = speeds.at(-1) ?? leastMph;
  return mostMph - last > 1e-6 ? [...speeds, mostMph] : speeds;
}

function combination(wish: TipWish, tip: TipSize, mph: number): TipCombination {
  const wantedGpa = perAcre(wish.wantedGalPer1000SqFt);
  const flow = gallonsPerMinute(wantedGpa, mph, wish.spacingIn);
  const exactPsi = 40 * (flow / tip.gpmAt40Psi) ** 2;
  const psi = Math.min(wish.mostPsi, Math.max(wish.leastPsi, Math.round(exactPsi)));
  const gpm = tipFlow(tip, psi);
  const gpa = gallonsPerAcre(gpm, mph, wish.spacingIn);
  const { size, colour } = tip;
  return { size, colour, psi, mph, gpm, gpa, galPer1000SqFt: per1000SqFt(gpa), difference: gpa / wantedGpa - 1 };
}
