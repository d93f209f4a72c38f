/** A rule that asks for elements of a record. */
export type RecordRule = {
  readonly id: string;
  /** As it is named beside what is missing: "40 CFR 171.303". */
  readonly name: string;
  /** For whom it holds, and how long it wants records kept. */
  readonly about: string;
  readonly source: string;
};

const CFR_7 = {
  id: '7-cfr-110.3',
  name: '7 CFR 110.3',
  about:
    'Federal; restricted-use products, certified applicators. Written within 14 days, kept for 2 years; a copy to the customer within 30 days.',
  source: 'Code of Federal Regulations, title 7, section 110.3 (edition of 2006)',
} as const;
const CFR_40 = {
  id: '40-cfr-171.303',
  name: '40 CFR 171.303',
  about: 'Federal; restricted-use products, commercial applicators. Kept for 2 years.',
  source: 'Code of Federal Regulations, title 40, section 171.303(b)(7), as summed up by a compliance library (Asmark)',
} as const;
const SOUTH_DAKOTA = {
  id: 'south-dakota',
  name: 'South Dakota',
  about: 'Commercial applicators, as an example of a state. Current each day, kept for 3 years.',
  source: 'South Dakota Department of Agriculture, checklist of records of commercial applicators',
} as const;
const MARYLAND = {
  id: 'maryland',
  name: 'Maryland',
  about: 'Commercial applicators, as an example of a state. Kept for 2 years.',
  source: 'Slides on record keeping in Maryland',
} as const;
const KENTUCKY = {
  id: 'kentucky',
  name: 'Kentucky',
  about: 'Lawn applications, as an example of a state.',
  source: 'The rule as a user of a forum quoted it in 2012; not read in the original',
} as const;

/**
 * The rules whose elements a record has room for: two federal ones and three states as examples. They tell why an element is there;
 * which of them holds for a firm is for its own state and adviser to say.
 */
export const RECORD_RULES: readonly RecordRule[] = [CFR_7, CFR_40, SOUTH_DAKOTA, MARYLAND, KENTUCKY];

/** The id of one of `RECORD_RULES`. */
export type RuleId =
  | typeof CFR_7.id
  | typeof CFR_40.id
  | typeof SOUTH_DAKOTA.id
  | typeof MARYLAND.id
  | typeof KENTUCKY.id;

/** "7 CFR 110.3, Maryland", in the order of the rules; '' for none. */
export function ruleNames(ids: readonly RuleId[]): string {
  return RECORD_RULES.filter((rule) => ids.some((id) => id === rule.id))
    .map((rule) => rule.name)
    .join(', ');
}
