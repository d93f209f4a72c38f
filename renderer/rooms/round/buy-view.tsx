import { Download } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Book } from '../../../core/book/index.ts';
import { writeBuyingTable, writeCostTable } from '../../../core/formats/index.ts';
import { buyingList, roundCost, usesOfPlan, waterByFillPoint } from '../../../core/round/buying/index.ts';
import { todayHere } from '../../format/index.ts';
import { NotYet } from '../../next/index.ts';
import {
  type KnownPlan,
  saveTable,
  useBook,
  useCurrentPlan,
  useCurrentRound,
  useFormat,
  usePlanStale,
  usePlans,
  useUnplannedUses,
} from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { buyWords } from '../../texts/round/index.ts';
import { Button, Choice, Section } from '../../ui/index.ts';
import { LinesTable, OrdersTable, WaterTable } from './buy-tables.tsx';
import { CostSection } from './cost-section.tsx';

/** What to buy and when, water by fill point, and what the round costs. */
export function BuyView() {
  const book = useBook((state) => state.open?.book ?? null);
  const plans = usePlans((state) => state.plans);
  const [from, setFrom] = useState(todayHere());
  if (book === null) return null;
  if (book.rounds.length === 0)
    return (
      <NotYet title={buyWords.view.nothingYet} needs="round">
        {buyWords.view.nothingYetAdvice}
      </NotYet>
    );
  return (
    <div className="ledger">
      <Buying book={book} plans={plans} from={from} onFrom={setFrom} />
      <WaterAndCost book={book} />
    </div>
  );
}

type BuyingProps = {
  readonly book: Book;
  readonly plans: Readonly<Record<string, KnownPlan>>;
  readonly from: string;
  readonly onFrom: (from: string) => void;
};

function Buying({ book, plans, from, onFrom }: BuyingProps) {
  const words = useFormat();
  const round = useCurrentRound();
  const [scope, setScope] = useState<'all' | 'one'>('all');
  const unplanned = useUnplannedUses(from);
  const list = useMemo(() => {
    const uses = book.rounds.flatMap(({ id }) => (plans[id] === undefined ? [] : usesOfPlan(book, plans[id].plan)));
    return buyingList(book, [...uses, ...(unplanned ?? [])], from);
  }, [book, plans, from, unplanned]);
  const lines = scope === 'all' ? list.lines : list.lines.filter((each) => each.roundId === round?.id);
  const costUsd = lines.reduce((sum, each) => sum + each.costUsd, 0);
  return (
    <>
      <header className="season-head">
        <h2>{buyWords.view.title}</h2>
        <span className="inline-field">
          <span aria-hidden="true">{buyWords.view.neededFrom}</span>
          <input
            type="date"
            className="input"
            aria-label={buyWords.view.neededFromLabel}
            value={from}
            onChange={(event) => event.target.value !== '' && onFrom(event.target.value)}
          />
        </span>
        <Choice
          label={buyWords.view.roundsShown}
          value={scope}
          options={[
            { value: 'all', words: buyWords.view.allRounds },
            { value: 'one', words: buyWords.view.only(round?.name ?? buyWords.view.thisRound) },
          ]}
          onChoose={setScope}
        />
        <span className="list-tools">
          <Button
            whyNot={lines.length === 0 ? buyWords.view.nothingToWrite : null}
            onPress={() => {
              saveTable(buyWords.view.fileName, writeBuyingTable(book, { ...list, lines })).catch(() => undefined);
            }}
          >
            <Download size={14} aria-hidden="true" /> {commonWords.writeTable}
          </Button>
        </span>
      </header>
      <Section title={buyWords.view.toOrder}>
        <OrdersTable book={book} orders={scope === 'all' ? list.orders : ordersOf(list, round?.id)} />
      </Section>
      <Section title={buyWords.view.byRoundAndWeek(words.money(costUsd))}>
        <p className="quiet small">{buyWords.view.note}</p>
        <LinesTable book={book} lines={lines} />
        {book.invented && <p className="invented">{commonWords.invented}</p>}
      </Section>
    </>
  );
}

/** Orders of one round: its own lines, each by itself. */
function ordersOf({ lines, orders }: ReturnType<typeof buyingList>, roundId: string | undefined): typeof orders {
  return lines.flatMap((line) => {
    if (line.roundId !== roundId || line.buy <= 0) return [];
    const late = orders.some((each) => each.orderBy === line.orderBy && each.late);
    const { productId, orderBy, firstUse, buy: amount, bags, costUsd } = line;
    return [{ productId, orderBy, firstUse, amount, bags, costUsd, late }];
  });
}

function WaterAndCost({ book }: { readonly book: Book }) {
  const known = useCurrentPlan();
  const round = useCurrentRound();
  const stale = usePlanStale();
  const water = useMemo(() => (known === null ? [] : waterByFillPoint(book, known.plan)), [book, known]);
  const cost = useMemo(() => (known === null ? null : roundCost(book, known.plan)), [book, known]);
  if (known === null || cost === null)
    return (
      <Section title={buyWords.view.waterAndCost(round?.name ?? buyWords.view.theRound)}>
        <p className="quiet">{buyWords.view.fromPlanOnly}</p>
      </Section>
    );
  return (
    <>
      <Section title={buyWords.view.water(known.plan.roundName)}>
        <WaterTable book={book} water={water} />
      </Section>
      <CostSection
        plan={known.plan}
        cost={cost}
        stale={stale}
        onWrite={() => {
          saveTable(buyWords.view.costFileName(known.plan.roundName), writeCostTable(cost)).catch(() => undefined);
        }}
      />
    </>
  );
}
