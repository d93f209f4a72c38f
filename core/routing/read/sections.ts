/** VRPLIB text taken apart: one value per field, the numbers of each row per section. */
export type Sections = {
  readonly fields: ReadonlyMap<string, string>;
  readonly rows: ReadonlyMap<string, readonly (readonly number[])[]>;
};

/** Takes VRPLIB and TSPLIB text apart. Words that are no numbers become NaN; nothing is judged here. */
export function sectionsOf(text: string): Sections {
  const fields = new Map<string, string>();
  const rows = new Map<string, (readonly number[])[]>();
  let section: (readonly number[])[] | null = null;
  for (const line of text.split(/\r?\n/)) {
    const field = /^\s*([A-Z_]+)\s*:\s*(.*?)\s*$/.exec(line);
    if (field !== null) {
      fields.set(field[1] as string, field[2] as string);
      section = null;
    } else if (/^\s*[A-Z_]+\s*$/.test(line)) {
      section = [];
      rows.set(line.trim(), section);
    } else if (section !== null) {
      const numbers = line.split(/\s+/).filter((word) => word !== '');
      if (numbers.length > 0) section.push(numbers.map(Number));
    }
  }
  return { fields, rows };
}

/** All numbers of a section, one after the other; none where the section is missing. */
export function numbersOf({ rows }: Sections, name: string): readonly number[] {
  return (rows.get(name) ?? []).flat();
}

/**
 * One row of `columns` whole numbers per node or vehicle, led by its number from 1 on. Null where the section is missing, cut short
 * or holds anything else.
 */
export function tableOf(file: Sections, name: string, length: number, columns: number): readonly Int32Array[] | null {
  const numbers = numbersOf(file, name);
  const width = columns + 1;
  if (numbers.length !== length * width || numbers.some((each) => !Number.isInteger(each) || each < 0)) return null;
  if (numbers.some((each, at) => at % width === 0 && each !== at / width + 1)) return null;
  return Array.from({ length: columns }, (_, column) =>
    Int32Array.from({ length }, (__, row) => numbers[row * width + column + 1] as number),
  );
}
