import type { FieldUnit, Meaning } from './mapping.ts';

const AREA: readonly { readonly pattern: RegExp; readonly unit: FieldUnit }[] = [
  { pattern: /(?:\b|^area)(?:ac|acres?|acreage)\b/, unit: 'ac' },
  { pattern: /(?:\b|^area)(?:ha|hectares?)\b/, unit: 'ha' },
  { pattern: /(?:\b|^area)(?:m2|m\^2|sq m|sqm|square met(?:er|re)s)\b/, unit: 'm2' },
];

/** The unit of bare numbers in a field, from its name; US units where the name has none. Null where there is no unit. */
export function guessUnit(meaning: Meaning, field: string): FieldUnit | null {
  const words = field
    .toLowerCase()
    .replace(/²/g, '2')
    .replace(/[_()[\]-]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  switch (meaning) {
    case 'area':
      return AREA.find(({ pattern }) => pattern.test(words))?.unit ?? 'ft2';
    case 'gateWidth':
      if (/cm$|cm\b/.test(words)) return 'cm';
      return /\b(?:ft|feet)\b|(?:gate|width)ft$/.test(words) ? 'ft' : 'in';
    case 'slope':
      return /%|pct|percent|grade/.test(words) ? '%' : 'deg';
    case 'keepAway':
      return /\b(?:m|metres|meters)\b/.test(words) ? 'm' : 'ft';
    default:
      return null;
  }
}

/** The units that can be chosen for a meaning; empty where it has none. */
export function unitsOf(meaning: Meaning): readonly FieldUnit[] {
  switch (meaning) {
    case 'area':
      return ['ft2', 'ac', 'm2', 'ha'];
    case 'gateWidth':
      return ['in', 'ft', 'cm'];
    case 'slope':
      return ['deg', '%'];
    case 'keepAway':
      return ['ft', 'm'];
    default:
      return [];
  }
}
