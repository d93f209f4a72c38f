import type { Book, Prices, TravelSettings } from '../../../core/book/index.ts';
import { edit, showError } from '../../stores/index.ts';
import { rigsWords } from '../../texts/shed/index.ts';
import { Field, type QuantityKind } from '../../ui/index.ts';
import { Cell, type Column, type Commit } from './column.tsx';
import { part } from './part.tsx';

/** What the book says about money and driving as a whole. */
type Terms = { readonly prices: Prices; readonly travel: TravelSettings };
type Speed = TravelSettings['speeds'][number];

function price(label: string, figure: QuantityKind, key: keyof Prices): Column<Terms> {
  return {
    kind: 'figure',
    figure,
    label,
    get: ({ prices }) => prices[key],
    set: (terms, value) => ({ ...terms, prices: { ...terms.prices, [key]: value } }),
  };
}

export const moneyColumns: readonly Column<Terms>[] = [
  price(rigsWords.terms.wage, 'money', 'wagePerHour'),
  price(rigsWords.terms.overtimeFactor, 'number', 'overtimeFactor'),
  price(rigsWords.terms.perMile, 'money', 'perMile'),
  price(rigsWords.terms.perRigDay, 'money', 'perRigDay'),
  price(rigsWords.terms.perDayLate, 'money', 'perDayLate'),
];

export const drivingColumns: readonly Column<Terms>[] = [
  {
    kind: 'figure',
    figure: 'number',
    label: rigsWords.terms.roadOverLine,
    positive: true,
    get: ({ travel }) => travel.circuity,
    set: (terms, circuity) => ({ ...terms, travel: { ...terms.travel, circuity } }),
  },
];

const speeds = part<Terms, Speed>({
  title: rigsWords.terms.speedsByDistance,
  one: rigsWords.terms.speed,
  rows: ({ travel }) => travel.speeds,
  replace: (terms, rows) => ({ ...terms, travel: { ...terms.travel, speeds: [...rows] } }),
  columns: [
    {
      kind: 'figure',
      figure: 'number',
      label: rigsWords.terms.upToHead,
      positive: true,
      get: (speed) => speed.upToMiles,
      set: (speed, upToMiles) => ({ ...speed, upToMiles }),
      unset: (speed) => ({ ...speed, upToMiles: null }),
    },
    {
      kind: 'figure',
      figure: 'speed',
      label: rigsWords.terms.at,
      positive: true,
      get: (speed) => speed.mph,
      set: (speed, mph) => ({ ...speed, mph }),
    },
  ],
  name: (speed) => (speed.upToMiles === null ? rigsWords.terms.anyDistance : rigsWords.terms.upTo(speed.upToMiles)),
  keyOf: (speed) => String(speed.upToMiles),
  create: ({ travel }) =>
    travel.speeds.some((each) => each.upToMiles === null)
      ? rigsWords.terms.openLineFirst
      : { upToMiles: null, mph: travel.speeds.at(-1)?.mph ?? 30 },
});

/** Wage, mileage and the speeds that driving is estimated with. */
export function TermsPanel({ book }: { readonly book: Book }) {
  const terms: Terms = { prices: book.prices, travel: book.travel };
  const commit: Commit<Terms> = ({ prices, travel }, label) => {
    const changes = {
      ...(prices === terms.prices ? {} : { prices }),
      ...(travel === terms.travel ? {} : { travel }),
    };
    const done = edit({ kind: 'set', changes, label });
    if (!done.ok) showError(done.error);
    return done;
  };
  const fields = (columns: readonly Column<Terms>[]) => (
    <div className="fields">
      {columns.map((column) => (
        <Field key={column.label} label={column.label}>
          <Cell column={column} record={terms} book={book} name="the whole book" commit={commit} />
        </Field>
      ))}
    </div>
  );
  return (
    <div className="shelf shelf-terms">
      <header className="shelf-head">
        <div>
          <h2>{rigsWords.terms.title}</h2>
          <p className="quiet small">{rigsWords.terms.whatHourMileLate}</p>
        </div>
      </header>
      {fields(moneyColumns)}
      <h3>{rigsWords.terms.driving}</h3>
      <p className="quiet small">
        {book.matrix === undefined ? rigsWords.terms.estimated : rigsWords.terms.tableFirst(book.matrix.source)}
      </p>
      {fields(drivingColumns)}
      {speeds.draw(terms, book, commit)}
    </div>
  );
}
