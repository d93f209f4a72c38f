import type { Book, Calibration } from '../../book/index.ts';
import { SHEETS as BENCH, type Calibrated, overdueUses } from '../../calibrate/index.ts';
import { formatNumber, formatRate } from '../../units/index.ts';
import { type Block, left, type Sheet, type TableRow } from '../blocks.ts';
import type { BookInput } from '../input.ts';
import { CALIBRATIONS } from '../texts/index.ts';
import { shortDateWord } from '../words.ts';

/** Every calibration that is kept in the book, newest first, by head and hand method, and when the next one is due. */
export function calibrationRecord({ book }: BookInput): Sheet {
  const owners = ownersOf(book);
  return {
    id: 'calibration-record',
    title: CALIBRATIONS.title,
    subtitle: book.name,
    invented: book.invented,
    blocks:
      owners.length === 0
        ? [{ kind: 'note', text: CALIBRATIONS.none }]
        : owners.flatMap((each) => ownerBlocks(book, each)),
  };
}

type Owner = { readonly name: string; readonly calibrated: Calibrated };

/** Heads and hand methods with calibrations, or with an interval for them. */
function ownersOf({ machines, handMethods }: Book): readonly Owner[] {
  const heads = machines.flatMap((machine) =>
    machine.heads.map((head) => ({ name: CALIBRATIONS.head(machine.name, head.name), calibrated: head })),
  );
  return [...heads, ...handMethods.map((each) => ({ name: each.name, calibrated: each }))].filter(
    ({ calibrated }) => (calibrated.calibrations ?? []).length > 0 || calibrated.dueAfterUses !== undefined,
  );
}

function ownerBlocks(book: Book, { name, calibrated }: Owner): readonly Block[] {
  const { deliveredGalPer1000SqFt: delivered, calibrations = [] } = calibrated;
  const over = overdueUses(calibrated);
  const newest = calibrations.toSorted((one, other) => other.on.localeCompare(one.on));
  return [
    { kind: 'heading', text: name },
    {
      kind: 'facts',
      facts: [
        {
          label: CALIBRATIONS.delivered,
          value: delivered === undefined ? CALIBRATIONS.notDelivered : formatRate(delivered, book.units),
        },
        { label: CALIBRATIONS.due, value: over === null ? CALIBRATIONS.neverDue : CALIBRATIONS.dueAfter(-over) },
      ],
    },
    {
      kind: 'table',
      columns: [
        left(CALIBRATIONS.date),
        left(CALIBRATIONS.what),
        left(CALIBRATIONS.by),
        left(CALIBRATIONS.setting),
        left(CALIBRATIONS.found),
      ],
      rows: newest.flatMap((each) => calibrationRows(book, each)),
    },
  ];
}

function calibrationRows(book: Book, calibration: Calibration): readonly TableRow[] {
  const bench = BENCH.find((each) => each.kind === calibration.what);
  const wordsOf = (name: string): string => bench?.blanks.find((each) => each.name === name)?.words ?? name;
  const found = calibration.found.map(({ name, value, unit }) =>
    CALIBRATIONS.figure(wordsOf(name), `${figure(value)}${unit === '' ? '' : ` ${unit}`}`),
  );
  const given = calibration.given.map(({ name, text }) => CALIBRATIONS.figure(wordsOf(name), text));
  const lines = [
    ...(given.length === 0 ? [] : [CALIBRATIONS.given(given.join('; '))]),
    ...(calibration.source === '' ? [] : [CALIBRATIONS.source(calibration.source)]),
  ];
  return [
    {
      look: 'stop',
      lead: [shortDateWord(book, calibration.on), calibration.what, calibration.by, calibration.setting],
      text: found.join('; '),
    },
    ...lines.map((text): TableRow => ({ look: 'detail', lead: [''], text })),
  ];
}

/** Four significant figures, without zeros at the end. */
function figure(value: number): string {
  const decimals = Math.min(6, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value) || 1))));
  const text = formatNumber(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
