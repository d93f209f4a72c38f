import type { Book } from '../../../core/book/index.ts';
import type { PlanDay, PlanLoad, PlanStop } from '../../../core/plan/result/index.ts';
import { selectLoad, useFormat, useSelection } from '../../stores/index.ts';
import { stopsWords } from '../../texts/day/index.ts';
import { Button, Section } from '../../ui/index.ts';

type LoadsProps = { readonly book: Book; readonly day: PlanDay; readonly stop: PlanStop };

/** The loads that a stop draws on, one at a time. */
export function Loads({ book, day, stop }: LoadsProps) {
  const wanted = useSelection((state) => state.loadNumber);
  const numbers = [...new Set(stop.tasks.flatMap((task) => task.loadNumbers))].sort((left, right) => left - right);
  const load =
    day.loads.find((each) => each.number === wanted && numbers.includes(each.number)) ??
    day.loads.find((each) => each.number === numbers[0]);
  if (load === undefined) return null;
  return (
    <Section title={numbers.length > 1 ? stopsWords.loads.loads : stopsWords.loads.loadNumber(load.number)}>
      {numbers.length > 1 && (
        <div className="load-choice">
          {numbers.map((number) => (
            <Button key={number} pressed={number === load.number} onPress={() => selectLoad(number)}>
              {stopsWords.loads.loadNumber(number)}
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
  const nameOf = (id: string) =>
    book.mixes.find((each) => each.id === id)?.name ?? book.products.find((each) => each.id === id)?.name ?? id;
  const rows: readonly (readonly [string, string])[] = [
    [stopsWords.loads.filled, words.clock(load.startSec)],
    [nameOf(load.materialId), amount(load.volumeGal, load.weightLb)],
    ...(tank
      ? load.products.map((each) => [nameOf(each.productId), words.product(each.amount, each.unit)] as const)
      : []),
    [stopsWords.loads.stillBefore, amount(load.beforeGal, load.beforeLb)],
    [stopsWords.loads.covers, words.area(load.coversSqFt)],
    [stopsWords.loads.leftInEnd, amount(load.leftGal, load.leftLb)],
  ];
  return <Rows rows={rows} />;
}

function Rows({ rows }: { readonly rows: readonly (readonly [string, string])[] }) {
  return (
    <dl className="rows">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** What the rig carries, and what is left at night. */
export function Truck({ book, day }: { readonly book: Book; readonly day: PlanDay }) {
  const words = useFormat();
  return (
    <Section title={day.rigName}>
      <Rows
        rows={[
          [stopsWords.loads.carriesInMorning, words.weight(day.carryWeightLb)],
          [stopsWords.loads.mayCarry, words.weight(day.payloadLb)],
        ]}
      />
      {day.leftOver.map((each) => (
        <p key={each.compartmentId} className="small">
          {stopsWords.loads.leftInEvening(
            each.volumeGal > 0 ? words.volume(each.volumeGal) : words.weight(each.weightLb),
          )}{' '}
          <span className="quiet">{words.said(each.advice)}</span>
        </p>
      ))}
      {book.invented && <p className="invented">{stopsWords.loads.invented}</p>}
    </Section>
  );
}
