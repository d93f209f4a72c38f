/** Customers with several visits, laid out as nodes: the visits of customer 1 first, then those of customer 2, and so on. */
type VisitNodes = {
  readonly visits: number;
  /** Per visit: its customer. */
  readonly customerOf: Int32Array;
  readonly firstOf: Int32Array;
  readonly countOf: Int32Array;
  readonly patterns: readonly (readonly number[])[];
};

/** `patterns` gives for each customer its sets of days as bit masks, all of one size; entry 0 is unused. */
export function visitNodes(patterns: readonly (readonly number[])[]): VisitNodes {
  const customerOf = [0];
  const firstOf = [0];
  const countOf = [0];
  const perVisit: (readonly number[])[] = [[]];
  for (let customer = 1; customer < patterns.length; customer += 1) {
    const sets = patterns[customer] ?? [];
    const first = customerOf.length;
    const count = daysOf(sets[0] ?? 0).length;
    for (let visit = 0; visit < count; visit += 1) {
      customerOf.push(customer);
      firstOf.push(first);
      countOf.push(visit === 0 ? count : 0);
      perVisit.push(visit === 0 ? sets : []);
    }
  }
  return {
    visits: customerOf.length - 1,
    customerOf: Int32Array.from(customerOf),
    firstOf: Int32Array.from(firstOf),
    countOf: Int32Array.from(countOf),
    patterns: perVisit,
  };
}

/** Days of a bit mask, in order. */
function daysOf(mask: number): readonly number[] {
  return Array.from({ length: 31 }, (_, day) => day).filter((day) => ((mask >> day) & 1) === 1);
}
