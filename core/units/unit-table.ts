/** One unit that people may write: its spellings (lower case, singular and plural) and how many canonical units it is. */
export type UnitEntry = { readonly name: string; readonly factor: number; readonly spellings: readonly string[] };

/** Everything about one kind of quantity that reading needs. */
export type UnitTable = {
  /** Noun for messages, for instance "area". */
  readonly noun: string;
  /** Examples for the hint of a refusal. */
  readonly examples: string;
  readonly units: ReadonlyMap<string, UnitEntry>;
  /** Name of the unit that a bare number is in. */
  readonly bare: string;
  /** Unit of a bare number that follows another unit, for instance feet -> inches in "3 ft 6". */
  readonly follower: Readonly<Record<string, string>>;
  /** Accepted range in canonical units, and the top of it in words. */
  readonly least: number;
  readonly most: number;
  readonly mostInWords: string;
  /** Sticky expression that matches any spelling, and the unit of each. */
  readonly expression: RegExp;
  readonly spellings: ReadonlyMap<string, UnitEntry>;
};

export type UnitTableInput = {
  readonly noun: string;
  readonly examples: string;
  readonly units: readonly UnitEntry[];
  readonly bare: string;
  readonly follower?: Readonly<Record<string, string>>;
  readonly least?: number;
  readonly most: number;
  readonly mostInWords: string;
};

/** Prepares a table for reading. Spaces inside a spelling are optional in the text, and so is a dot after each word. */
export function unitTable(input: UnitTableInput): UnitTable {
  const spellings = new Map<string, UnitEntry>();
  for (const unit of input.units) for (const spelling of unit.spellings) spellings.set(squeeze(spelling), unit);
  const longestFirst = input.units.flatMap((unit) => unit.spellings).sort((left, right) => right.length - left.length);
  return {
    ...input,
    units: new Map(input.units.map((unit) => [unit.name, unit])),
    follower: input.follower ?? {},
    least: input.least ?? 0,
    expression: new RegExp(`(?:\\s*-)?\\s*(${longestFirst.map(pattern).join('|')})(?![a-z^])`, 'y'),
    spellings,
  };
}

/** A spelling without spaces and dots: the key under which its unit is found. */
export function squeeze(spelling: string): string {
  return spelling.replace(/[\s.]/g, '');
}

/** The same table with another unit for bare numbers. */
export function withBareUnit(table: UnitTable, bare: string): UnitTable {
  return { ...table, bare };
}

function pattern(spelling: string): string {
  const words = spelling.split(' ').map((word) => word.replace(/[\^*+?()[\]{}|\\/]/g, '\\$&'));
  return words.map((word) => (/[a-z]$/.test(word) ? `${word}\\.?` : word)).join('\\s*');
}
