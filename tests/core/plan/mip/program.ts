/** A column of a program, by number. */
export type Column = number;
export type Term = readonly [coefficient: number, column: Column];
type Sense = '<=' | '>=' | '=';
type Row = { readonly terms: readonly Term[]; readonly sense: Sense; readonly limit: number };
type Bounds = { readonly whole: boolean; readonly most: number };

/** A mixed-integer program that is being written: columns of at least 0, rows, and what is to be least. */
export class Program {
  private readonly columns: Bounds[] = [];
  private readonly rows: Row[] = [];
  private readonly costs: Term[] = [];

  /** A column of whole numbers 0..most. */
  whole(most: number): Column {
    return this.columns.push({ whole: true, most }) - 1;
  }

  /** A column 0..most that may be broken; infinite for no bound. */
  free(most: number): Column {
    return this.columns.push({ whole: false, most }) - 1;
  }

  /** Adds terms to what is to be least. */
  cost(...terms: readonly Term[]): void {
    this.costs.push(...terms);
  }

  row(terms: readonly Term[], sense: Sense, limit: number): void {
    this.rows.push({ terms: merged(terms), sense, limit });
  }

  /** The program as text in the CPLEX LP format. */
  text(): string {
    const whole = this.columns.flatMap(({ whole }, column) => (whole ? [`x${column}`] : []));
    return [
      'Minimize',
      ` obj: ${written(merged(this.costs))}`,
      'Subject To',
      ...this.rows.map(({ terms, sense, limit }, row) => ` r${row}: ${written(terms)} ${sense} ${limit}`),
      'Bounds',
      ...this.columns.map(({ most }, column) => ` 0 <= x${column}${Number.isFinite(most) ? ` <= ${most}` : ''}`),
      'General',
      ...whole.map((name) => ` ${name}`),
      'End',
      '',
    ].join('\n');
  }

  /** Values with the whole ones rounded. */
  rounded(values: readonly number[]): readonly number[] {
    return values.map((value, column) => (this.columns[column]?.whole ? Math.round(value) : value));
  }

  /** By how much values break the row or bound that they break most; 0 where they hold all. */
  worstBreach(values: readonly number[]): number {
    const bounds = this.columns.map(({ most }, column) => {
      const value = values[column] as number;
      return Math.max(-value, value - most);
    });
    const rows = this.rows.map(({ terms, sense, limit }) => {
      const over = terms.reduce((sum, [coefficient, column]) => sum + coefficient * (values[column] as number), -limit);
      if (sense === '<=') return over;
      return sense === '>=' ? -over : Math.abs(over);
    });
    return [...bounds, ...rows].reduce((worst, each) => Math.max(worst, each), 0);
  }

  get size(): number {
    return this.columns.length;
  }
}

/** Every column once, and none with 0. */
function merged(terms: readonly Term[]): readonly Term[] {
  const sums = new Map<Column, number>();
  for (const [coefficient, column] of terms) sums.set(column, (sums.get(column) ?? 0) + coefficient);
  return [...sums].flatMap(([column, sum]) => (sum === 0 ? [] : [[sum, column] as const]));
}

function written(terms: readonly Term[]): string {
  if (terms.length === 0) return '0 x0';
  return terms
    .map(([coefficient, column]) => `${coefficient < 0 ? '-' : '+'} ${Math.abs(coefficient)} x${column}`)
    .join(' ');
}
