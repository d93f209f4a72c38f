import { Download, TriangleAlert } from 'lucide-react';
import { useMemo } from 'react';
import type { Plan } from '../../../core/plan/result/index.ts';
import { COST_PARTS, type CostPart, type RoundCost } from '../../../core/round/buying/index.ts';
import { selectProperty, showSelectionOnMap, useFormat, useSelection } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { planWords } from '../../texts/round/index.ts';
import { Button, Section } from '../../ui/index.ts';
import { FigureList } from './figure-list.tsx';

const TITLES: Readonly<Record<CostPart, string>> = {
  wage: planWords.costs.wage,
  overtime: planWords.costs.overtime,
  miles: planWords.costs.miles,
  fixed: planWords.costs.rigDays,
  late: planWords.costs.late,
  evenness: planWords.costs.unevenDays,
  product: commonWords.product,
};

type CostProps = {
  readonly plan: Plan;
  readonly cost: RoundCost;
  readonly stale: boolean;
  readonly onWrite: () => void;
};

/** What a round costs: in all by what it is for, and by lawn. Parts that come to nothing are left out. */
export function CostSection({ plan, cost, stale, onWrite }: CostProps) {
  const words = useFormat();
  const selectedId = useSelection((state) => state.propertyId);
  const usd = (cents: number) => words.money(cents / 100);
  const parts = COST_PARTS.filter((part) => cost.cents[part] > 0);
  const lawns = useMemo(
    () =>
      cost.lawns
        .map((each) => ({ ...each, id: each.propertyId }))
        .toSorted((one, other) => other.totalCents - one.totalCents),
    [cost],
  );
  return (
    <Section
      title={planWords.costs.title(plan.roundName)}
      aside={
        <Button look="quiet" onPress={onWrite}>
          <Download size={14} aria-hidden="true" /> {commonWords.writeTable}
        </Button>
      }
    >
      {stale && (
        <p className="caution small">
          <TriangleAlert size={13} aria-hidden="true" /> {commonWords.bookChanged}
        </p>
      )}
      <dl className="figures cost-figures">
        {parts.map((part) => (
          <div key={part}>
            <dd>{usd(cost.cents[part])}</dd>
            <dt>{TITLES[part]}</dt>
          </div>
        ))}
        <div>
          <dd>{usd(cost.totalCents)}</dd>
          <dt>{commonWords.inAll}</dt>
        </div>
      </dl>
      <p className="quiet small">{planWords.costs.note}</p>
      <FigureList
        label={planWords.costs.lawns}
        nameTitle={commonWords.lawn}
        items={lawns}
        selectedId={selectedId}
        onSelect={selectProperty}
        onOpen={showSelectionOnMap}
        columns={[
          { id: 'total', title: commonWords.inAll, show: (lawn) => <strong>{usd(lawn.totalCents)}</strong> },
          { id: 'paid', title: planWords.costs.paidTime, show: (lawn) => words.duration(lawn.paidSec) },
          ...parts.map((part) => ({
            id: part,
            title: TITLES[part],
            show: (lawn: (typeof lawns)[number]) => usd(lawn.cents[part]),
          })),
        ]}
      />
    </Section>
  );
}
