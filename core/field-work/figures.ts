import { formatNumber, METRES_PER_FOOT, SQUARE_METRES_PER_SQUARE_FOOT, type UnitSystem } from '../units/index.ts';

/** Puts lengths and areas of field work into words, as exactly as a tape gives them. */
export type FieldWords = {
  /** "19.4 ft" */
  readonly length: (lengthFt: number) => string;
  /** "19.4", in the unit that `length` names. */
  readonly bareLength: (lengthFt: number) => string;
  /** "737.5 ft²" */
  readonly area: (areaSqFt: number) => string;
};

export function fieldWords(system: UnitSystem): FieldWords {
  const metric = system === 'metric';
  const bareLength = (lengthFt: number) => bare(metric ? lengthFt * METRES_PER_FOOT : lengthFt);
  const bareArea = (areaSqFt: number) => bare(metric ? areaSqFt * SQUARE_METRES_PER_SQUARE_FOOT : areaSqFt);
  return {
    bareLength,
    length: (lengthFt) => `${bareLength(lengthFt)} ${metric ? 'm' : 'ft'}`,
    area: (areaSqFt) => `${bareArea(areaSqFt)} ${metric ? 'm²' : 'ft²'}`,
  };
}

/** A figure with two decimals at most: "19.4", "1,256.64". */
export function bare(value: number, decimals = 2): string {
  return formatNumber(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}
