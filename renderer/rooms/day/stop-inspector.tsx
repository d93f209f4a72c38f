import { useMemo } from 'react';
import type { Book, Property } from '../../../core/book/index.ts';
import { farthestFt } from '../../../core/measure/index.ts';
import type { PlanDay, PlanLoad, PlanStop } from '../../../core/plan/result/index.ts';
import { type FitCell, fitTable, methodName } from '../../../core/reach/index.ts';
import { measureOf, selectLoad, useBook, useCurrentRound, useFormat, useSelection } from '../../stores/index.ts';
import { Button, Section } from '../../ui/index.ts';

/** The selected stop: who can go, which load is used, and why. */
export function StopInspector({ day }: { readonly day: PlanDay }) {
  const book = useBook((state) => state.open?.book ?? null);
  const number = useSelection((state) => state.stopNumber);
  const stop = day.stops.find((each) => each.number === number) ?? day.stops[0];
  const property = book?.properties.find((each) => each.id === stop?.propertyId);
  if (book === null || stop === undefined || property === undefined)
    return <p className="section quiet">Choose a stop.</p>;
  return (
    <div className="inspector">
      <header className="inspector-head">
        <h2>
          {stop.number} {stop.name}
        </h2>
        <StopTimes stop={stop} />
      </header>
      <Fit book={book} property={property} day={day} stop={stop} />
      <Why book={book} stop={stop} />
      <Loads book={book} day={day} stop={stop} />
      <DayEnd book={book} day={day} />
    </div>
  );
}

function StopTimes({ stop }: { readonly stop: PlanStop }) {
  const words = useFormat();
  return (
    <p className="quiet small">
      {words.clock(stop.arriveSec)} to {words.clock(stop.leaveSec)}, {words.duration(stop.leaveSec - stop.arriveSec)} on
      site, {words.duration(stop.driveSec)} of driving before
    </p>
  );
}

type FitProps = { readonly book: Book; readonly property: Property; readonly day: PlanDay; readonly stop: PlanStop };

/** Zones by methods: minutes where it fits, the reason where it does not. */
function Fit({ book, property, day, stop }: FitProps) {
  const round = useCurrentRound();
  const words = useFormat();
  const treatment = book.treatments.find((each) => each.id === stop.tasks[0]?.treatmentId);
  const rig = book.rigs.find((each) => each.id === day.rigId) ?? null;
  const table = useMemo(() => {
    if (treatment === undefined) return null;
    const one = { ...book, properties: [property] };
    return fitTable(one, [measureOf(property)], treatment, rig, { farthestFt, wetGround: round?.wetGround ?? false });
  }, [book, property, treatment, rig, round]);
  if (table === null) return null;
  return (
    <Section title={`Who can go: ${treatment?.name ?? ''}`}>
      <div className="table-scroll">
        <table className="table fit-table">
          <thead>
            <tr>
              <th scope="col">zone</th>
              {table.columns.map((column) => (
                <th key={column.name} scope="col">
                  {column.name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row) => (
              <tr key={row.zoneId}>
                <th scope="row">{property.zones.find((zone) => zone.id === row.zoneId)?.name ?? row.zoneId}</th>
                {row.cells.map((cell, index) => (
                  <td key={table.columns[index]?.name ?? index} className={cellLook(cell)}>
                    {cell.answer.can
                      ? `${words.duration((cell.minutes ?? 0) * 60)}${cell.answer.tight ? ', tight' : ''}`
                      : cell.answer.words}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Section>
  );
}

function cellLook(cell: FitCell): string | undefined {
  if (!cell.answer.can) return 'fit-no';
  return cell.answer.tight ? 'fit-tight' : undefined;
}

function Why({ book, stop }: { readonly book: Book; readonly stop: PlanStop }) {
  const words = useFormat();
  return (
    <Section title="Chosen">
      {stop.tasks.map((task) => (
        <p key={`${task.zoneId} ${task.treatmentId} ${task.step}`}>
          <b>
            {book.properties.find((each) => each.id === stop.propertyId)?.zones.find((zone) => zone.id === task.zoneId)
              ?.name ?? task.zoneId}
          </b>
          , {words.area(task.areaSqFt)}: {methodName(book, task.method)} <span className="quiet small">{task.why}</span>
        </p>
      ))}
    </Section>
  );
}

function Loads({ book, day, stop }: { readonly book: Book; readonly day: PlanDay; readonly stop: PlanStop }) {
  const wanted = useSelection((state) => state.loadNumber);
  const numbers = [...new Set(stop.tasks.flatMap((task) => task.loadNumbers))];
  const load =
    day.loads.find((each) => each.number === wanted && numbers.includes(each.number)) ??
    day.loads.find((each) => each.number === numbers[0]);
  if (load === undefined) return null;
  return (
    <Section title={`Load ${load.number}`}>
      {numbers.length > 1 && (
        <div className="load-choice">
          {numbers.map((number) => (
            <Button key={number} pressed={number === load.number} onPress={() => selectLoad(number)}>
              load {number}
            </Button>
          ))}
        </div>
      )}
      <LoadFigures book={book} load={load} />
    </Section>
  );
}

function LoadFigures({ book, load }: { readonly book: Book; readonly load: PlanLoad }) {
  const words = useFormat();
  const tank = load.kind === 'tank';
  const amount = (gal: number, lb: number): string => (tank ? words.volume(gal) : words.weight(lb));
  const material =
    book.mixes.find((each) => each.id === load.materialId)?.name ??
    book.products.find((each) => each.id === load.materialId)?.name;
  return (
    <dl className="rows">
      <dt>{material ?? load.materialId}</dt>
      <dd>{amount(load.volumeGal, load.weightLb)}</dd>
      {load.products.map((product) => (
        <ProductLine
          key={product.productId}
          name={book.products.find((each) => each.id === product.productId)?.name ?? product.productId}
          amount={words.product(product.amount, product.unit)}
        />
      ))}
      <dt>still in it before</dt>
      <dd>{amount(load.beforeGal, load.beforeLb)}</dd>
      <dt>covers</dt>
      <dd>{words.area(load.coversSqFt)}</dd>
      <dt>left in the end</dt>
      <dd>{amount(load.leftGal, load.leftLb)}</dd>
      <dt>filled</dt>
      <dd>{words.clock(load.startSec)}</dd>
    </dl>
  );
}

function ProductLine({ name, amount }: { readonly name: string; readonly amount: string }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>{amount}</dd>
    </>
  );
}

function DayEnd({ book, day }: { readonly book: Book; readonly day: PlanDay }) {
  const words = useFormat();
  return (
    <Section title="Truck">
      <dl className="rows">
        <dt>carries in the morning</dt>
        <dd>{words.weight(day.carryWeightLb)}</dd>
        <dt>payload</dt>
        <dd>{words.weight(day.payloadLb)}</dd>
        <dt>left over at night</dt>
        <dd>
          {day.leftOver.length === 0
            ? 'nothing'
            : day.leftOver
                .map((each) => (each.volumeGal > 0 ? words.volume(each.volumeGal) : words.weight(each.weightLb)))
                .join(', ')}
        </dd>
      </dl>
      {book.invented && <p className="why">Invented book: products and rates are not for use.</p>}
    </Section>
  );
}
