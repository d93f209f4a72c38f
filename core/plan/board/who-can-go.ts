import type { Book, Property, Treatment } from '../../book/index.ts';
import { bandAreaSqFt, farthestFt, measureBook, standsFor, treatableGround } from '../../measure/index.ts';
import { zonePassesWith } from '../../passes/index.ts';
import { type FitCell, type FitRow, fitTable } from '../../reach/index.ts';
import { lawnsOf, ofAskedZones } from '../../round/programme/index.ts';
import { quantity } from '../../units/index.ts';

/** Whether one machine or hand method can do one lawn. */
export type GoCell = {
  /** Minutes of treating every zone of the lawn, hand trim included; null where it cannot do all of them. */
  readonly minutes: number | null;
  /** The reason where it cannot, what is to be minded where it can; '' for nothing. */
  readonly words: string;
  /** Less than 2 in to spare at a gate. */
  readonly tight: boolean;
};
/** One lawn of the table: the ground to be treated in square feet, and a cell for each method. */
export type GoRow = {
  readonly propertyId: string;
  readonly name: string;
  readonly address: string;
  readonly treatedSqFt: number;
  readonly cells: readonly GoCell[];
};
/** Lawns of a round by machines and hand methods, for one treatment. */
export type GoTable = {
  readonly treatmentId: string;
  readonly columns: readonly { readonly id: string; readonly name: string }[];
  readonly rows: readonly GoRow[];
};

/**
 * Lawns by methods, whoever carries them: minutes where one fits, the reason where it does not; only lawns and zones that the round gives
 * the treatment to. Null without such round or treatment.
 */
export function whoCanGo(book: Book, roundId: string, treatmentId: string): GoTable | null {
  const round = book.rounds.find((each) => each.id === roundId);
  const treatment = book.treatments.find((each) => each.id === treatmentId);
  if (round === undefined || treatment === undefined) return null;
  const measureById = new Map(measureBook(book).map((each) => [each.propertyId, each]));
  const areaOf = ({ id }: Property) => measureById.get(id)?.treatableSqFt ?? quantity(0);
  const { taken: properties } = lawnsOf(book, round, areaOf);
  const part: Book = { ...book, properties };
  const asked = properties.flatMap((property) => {
    const measure = measureById.get(property.id);
    return measure === undefined ? [] : [ofAskedZones(measure, round, treatmentId, property, areaOf)];
  });
  const site = {
    farthestFt,
    stands: standsFor,
    passes: zonePassesWith(treatableGround),
    wetGround: round.wetGround,
    ...bandOf(treatment),
  };
  const table = fitTable(part, asked, treatment, null, site);
  const rowsOf = new Map<string, FitRow[]>();
  for (const row of table.rows) rowsOf.set(row.propertyId, [...(rowsOf.get(row.propertyId) ?? []), row]);
  const columns = table.columns.map(({ method, name }) => ({ id: JSON.stringify(method), name }));
  const rows = properties.flatMap(({ id, name, address }) => {
    const zones = rowsOf.get(id) ?? [];
    if (zones.length === 0) return [];
    const treatedSqFt = zones.reduce((sum, zone) => sum + zone.treatedSqFt, 0);
    return [{ propertyId: id, name, address, treatedSqFt, cells: columns.map((_, column) => cellOf(zones, column)) }];
  });
  return { treatmentId, columns, rows };
}

function bandOf({ coverage }: Treatment) {
  if (coverage.kind !== 'band') return {};
  const { widthFt, along } = coverage;
  type Ground = Parameters<typeof bandAreaSqFt>;
  return {
    treatedSqFt: (property: Ground[0], zone: Ground[1]): number => bandAreaSqFt(property, zone, widthFt, along),
  };
}

/** The zones of a lawn in one column. */
function cellOf(zones: readonly FitRow[], column: number): GoCell {
  const cells = zones.flatMap((zone) => {
    const cell = zone.cells[column];
    return cell === undefined ? [] : [{ cell, zone }];
  });
  const said = (words: string, zone: FitRow): string =>
    zones.length > 1 ? `${zone.name.split(', ').at(-1)}: ${words}` : words;
  const refused = cells.find(({ cell }) => !cell.answer.can || cell.minutes === null);
  if (refused !== undefined) {
    const words = refused.cell.answer.can ? 'minutes not known' : refused.cell.answer.words;
    return { minutes: null, words: said(words, refused.zone), tight: false };
  }
  const minded = cells.filter(({ cell }) => cell.answer.tight);
  return {
    minutes: cells.reduce((sum, { cell }) => sum + (cell.minutes ?? 0), 0),
    words: [
      ...new Set([
        ...minded.map(({ cell, zone }) => said(cell.answer.words, zone)),
        ...cells.flatMap(({ cell }) => trimWords(cell)),
      ]),
    ].join('; '),
    tight: minded.length > 0,
  };
}

function trimWords({ trim, notReachedSqFt }: FitCell): readonly string[] {
  if (trim !== null) return [`${trim.areaSqFt} ft² trimmed with ${trim.name}`];
  return notReachedSqFt > 0 ? [`${notReachedSqFt} ft² not reached`] : [];
}
