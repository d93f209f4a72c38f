import type { Book, Gauge } from '../../../core/book/index.ts';
import type { Content, DayNow } from '../../../core/plan/live/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { freshId, putRecord, showError, useFormat } from '../../stores/index.ts';
import { underWayWords } from '../../texts/day/index.ts';
import { QuantityInput, Section } from '../../ui/index.ts';

type AboardProps = { readonly book: Book; readonly day: PlanDay; readonly now: DayNow };

/** What is in every tank, hopper and stock: reckoned, or read from the gauges and typed in. */
export function Aboard({ book, day, now }: AboardProps) {
  const words = useFormat();
  const { aboard } = now;
  const read = book.gauges
    .filter((each) => each.on === day.date && each.rigId === day.rigId && each.atMin >= now.sinceMin)
    .toSorted((one, other) => one.atMin - other.atMin)
    .at(-1);
  const keep = (change: (gauge: Gauge) => Gauge) => {
    const gauge = change(read ?? blank(book, day, now));
    const done = putRecord('gauges', gauge, underWayWords.aboard.read);
    if (!done.ok) showError(done.error);
    return done;
  };
  const nameOf = (id: string): string =>
    book.mixes.find((each) => each.id === id)?.name ?? book.products.find((each) => each.id === id)?.name ?? id;
  const setContent = (content: Content, tank: boolean, value: number) =>
    keep((gauge) => {
      const others = gauge.compartments.filter((each) => each.compartmentId !== content.compartmentId);
      const amount = tank ? { gal: value } : { lb: value };
      const { compartmentId, materialId } = content;
      return { ...gauge, compartments: [...others, { compartmentId, materialId, ...amount }] };
    });
  const lines = day.levels.filter((line) => line.kind !== 'nurse' && line.kind !== 'bags');
  const hasNurse = day.levels.some((line) => line.kind === 'nurse');
  return (
    <Section
      title={
        aboard.readAtMin === undefined
          ? underWayWords.aboard.reckonedTitle
          : underWayWords.aboard.readTitle(words.clock(aboard.readAtMin * 60))
      }
    >
      <table className="table table-narrow">
        <tbody>
          {lines.map((line) => {
            const found = aboard.compartments.find((each) => each.compartmentId === line.id);
            const first = day.loads.find((load) => load.compartmentId === line.id);
            const materialId = first?.materialId ?? '';
            const content = found ?? { compartmentId: line.id, materialId, volumeGal: 0, weightLb: 0 };
            const tank = line.kind === 'tank';
            return (
              <tr key={line.id}>
                <th scope="row">
                  {line.label}
                  {content.materialId !== '' && <span className="quiet small"> {nameOf(content.materialId)}</span>}
                </th>
                <td>
                  <QuantityInput
                    label={underWayWords.aboard.levelOf(line.label)}
                    kind={tank ? 'volume' : 'weight'}
                    value={hundredths(tank ? content.volumeGal : content.weightLb)}
                    most={line.capacity}
                    onCommit={(value) => setContent(content, tank, value ?? 0)}
                  />
                </td>
              </tr>
            );
          })}
          {hasNurse && (
            <tr>
              <th scope="row">{underWayWords.aboard.nurseTank}</th>
              <td>
                <QuantityInput
                  label={underWayWords.aboard.nurseTankLabel}
                  kind="volume"
                  value={hundredths(aboard.waterGal)}
                  onCommit={(value) => keep((gauge) => ({ ...gauge, nurseGal: value ?? 0 }))}
                />
              </td>
            </tr>
          )}
          {aboard.bags.map(({ productId, weightLb }) => (
            <tr key={productId}>
              <th scope="row">{underWayWords.aboard.bagsOf(nameOf(productId))}</th>
              <td>
                <QuantityInput
                  label={underWayWords.aboard.bagsLabel(nameOf(productId))}
                  kind="weight"
                  value={hundredths(weightLb)}
                  onCommit={(value) =>
                    keep((gauge) => ({
                      ...gauge,
                      bags: aboard.bags.map((each) => ({
                        productId: each.productId,
                        lb: each.productId === productId ? (value ?? 0) : each.weightLb,
                      })),
                    }))
                  }
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Section>
  );
}

function blank(book: Book, day: PlanDay, now: DayNow): Gauge {
  return {
    id: freshId(book.gauges, 'gauge'),
    on: day.date,
    rigId: day.rigId,
    atMin: Math.ceil(now.sinceMin),
    compartments: [],
    bags: [],
  };
}

/** As exact as a plan is. */
function hundredths(amount: number): number {
  return Math.round(amount * 100) / 100;
}
