import { type Book, type BookRoads, PLAIN_ROADS } from '../../../../core/book/index.ts';
import { ROAD_CLASSES, ROAD_SETTINGS } from '../../../../core/roads/index.ts';
import { METRES_PER_MILE } from '../../../../core/units/index.ts';
import { changeRoads, useFormat } from '../../../stores/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';
import { Field, QuantityInput, Section, TableHead } from '../../../ui/index.ts';
import { Cell, type Column, type Commit } from '../column.tsx';
import { part } from '../part.tsx';
import { classWords } from './words.ts';

const KMH_PER_MPH = METRES_PER_MILE / 1000;

type Truck = NonNullable<BookRoads['truck']>;
const NO_TRUCK: Truck = { trailer: false, heavy: false };

const truckOf = (roads: BookRoads): Truck => roads.truck ?? NO_TRUCK;

function limit(
  label: string,
  figure: 'length' | 'weight',
  key: 'heightFt' | 'widthFt' | 'weightLb',
): Column<BookRoads> {
  return {
    kind: 'figure',
    figure,
    label,
    positive: true,
    get: (roads) => truckOf(roads)[key] ?? null,
    set: (roads, value) => ({ ...roads, truck: { ...truckOf(roads), [key]: value } }),
    unset: (roads) => {
      const { [key]: _, ...rest } = truckOf(roads);
      return { ...roads, truck: rest };
    },
  };
}

export const truckColumns: readonly Column<BookRoads>[] = [
  limit(roadsWords.driving.clearHeightNeeds, 'length', 'heightFt'),
  limit(roadsWords.driving.clearWidth, 'length', 'widthFt'),
  limit(roadsWords.driving.weightAboard, 'weight', 'weightLb'),
  {
    kind: 'flag',
    label: roadsWords.driving.pullsATrailer,
    get: (roads) => truckOf(roads).trailer,
    set: (roads, trailer) => ({ ...roads, truck: { ...truckOf(roads), trailer } }),
  },
  {
    kind: 'flag',
    label: roadsWords.driving.truckRules,
    get: (roads) => truckOf(roads).heavy,
    set: (roads, heavy) => ({ ...roads, truck: { ...truckOf(roads), heavy } }),
  },
];

export const arrivalColumns: readonly Column<BookRoads>[] = [
  {
    kind: 'figure',
    figure: 'length',
    label: roadsWords.driving.farthest,
    positive: true,
    most: 10_000,
    get: (roads) => roads.mostFt,
    set: (roads, mostFt) => ({ ...roads, mostFt }),
  },
  {
    kind: 'flag',
    label: roadsWords.driving.curbside,
    get: (roads) => roads.kerbSide,
    set: (roads, kerbSide) => ({ ...roads, kerbSide }),
  },
  {
    kind: 'flag',
    label: roadsWords.driving.privateRoads,
    get: (roads) => roads.privateRoads,
    set: (roads, privateRoads) => ({ ...roads, privateRoads }),
  },
  {
    kind: 'choice',
    label: roadsWords.driving.side,
    options: () => [
      { value: 'right', words: roadsWords.driving.right },
      { value: 'left', words: roadsWords.driving.left },
    ],
    get: (roads) => roads.drivesOn,
    set: (roads, side) => ({ ...roads, drivesOn: side === 'left' ? 'left' : 'right' }),
  },
];

export const hours = part<BookRoads, BookRoads['times'][number]>({
  title: roadsWords.driving.slowHours,
  one: roadsWords.driving.timeOfDay,
  rows: (roads) => roads.times,
  replace: (roads, times) => ({ ...roads, times: [...times] }),
  columns: [
    { kind: 'text', label: roadsWords.driving.what, get: (row) => row.name, set: (row, name) => ({ ...row, name }) },
    {
      kind: 'figure',
      figure: 'clock',
      label: roadsWords.driving.from,
      get: (row) => row.fromMin,
      set: (row, fromMin) => ({ ...row, fromMin }),
    },
    {
      kind: 'figure',
      figure: 'clock',
      label: roadsWords.driving.to,
      get: (row) => row.toMin,
      set: (row, toMin) => ({ ...row, toMin }),
    },
    {
      kind: 'figure',
      figure: 'number',
      label: roadsWords.driving.timesAsLong,
      positive: true,
      most: 10,
      get: (row) => row.factor,
      set: (row, factor) => ({ ...row, factor }),
    },
  ],
  name: (row) => (row.name === '' ? roadsWords.driving.timeOfDay : row.name),
  keyOf: (row) => `${row.name} ${row.fromMin} ${row.toMin}`,
  create: (roads) =>
    roads.times.some((each) => each.name === '')
      ? roadsWords.driving.nameLastFirst
      : { name: '', fromMin: 7 * 60, toMin: 9 * 60, factor: 1.2 },
});

type Props = { readonly roads: BookRoads | undefined };

/** The truck, how it arrives, and the hours of the day. */
export function HowDriven({ book }: { readonly book: Book }) {
  const { roads = PLAIN_ROADS } = book;
  const commit: Commit<BookRoads> = (next, label) => changeRoads(next, label);
  const fields = (columns: readonly Column<BookRoads>[]) => (
    <div className="fields">
      {columns.map((column) => (
        <Field key={column.label} label={column.label}>
          <Cell column={column} record={roads} book={book} name="driving by road" commit={commit} />
        </Field>
      ))}
    </div>
  );
  return (
    <>
      <Section title={roadsWords.driving.theTruck}>{fields(truckColumns)}</Section>
      <Section title={roadsWords.driving.arriving}>{fields(arrivalColumns)}</Section>
      {hours.draw(roads, book, commit)}
      <p className="quiet small road-note">{roadsWords.driving.slowHoursNote}</p>
    </>
  );
}

/** Speeds by class of road: the program's own, and the book's instead. */
export function RoadSpeeds({ roads = PLAIN_ROADS }: Props) {
  const words = useFormat();
  const own = new Map(roads.speeds.map((each) => [each.roadClass, each.mph]));
  const commit = (roadClass: string, mph: number | null) => {
    const others = roads.speeds.filter((each) => each.roadClass !== roadClass);
    const speeds = mph === null ? others : [...others, { roadClass, mph }];
    return changeRoads({ speeds }, roadsWords.driving.changeSpeedOf(classWords(roadClass)));
  };
  return (
    <Section title={roadsWords.driving.speeds}>
      <p className="quiet small">
        {roadsWords.driving.speedsNote(Math.round((roads.shareOfLimit ?? ROAD_SETTINGS.shareOfLimit) * 100))}
      </p>
      <div className="table-scroll">
        <table className="table">
          <TableHead
            columns={[
              roadsWords.driving.road,
              roadsWords.driving.classInMap,
              { figures: roadsWords.driving.program },
              { figures: roadsWords.driving.yours },
            ]}
          />
          <tbody>
            {ROAD_CLASSES.map((roadClass) => (
              <tr key={roadClass}>
                <th scope="row">{classWords(roadClass)}</th>
                <td className="quiet">{roadClass}</td>
                <td className="number">{words.speed(ROAD_SETTINGS.speedsKmh[roadClass] / KMH_PER_MPH)}</td>
                <td className="number">
                  <QuantityInput
                    kind="speed"
                    label={roadsWords.driving.speedOf(classWords(roadClass), roadClass)}
                    value={own.get(roadClass) ?? null}
                    optional
                    positive
                    most={130}
                    onCommit={(mph) => commit(roadClass, mph)}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Section>
  );
}
