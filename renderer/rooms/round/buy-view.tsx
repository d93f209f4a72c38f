import { Download } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Book } from '../../../core/book/index.ts';
import { writeBuyingTable, writeCostTable } from '../../../core/formats/index.ts';
import { buyingList, roundCost, usesOfPlan, waterByFillPoint } from '../../../core/round/buying/index.ts';
import { todayHere } from '../../format/index.ts';
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
import { Button, Choice, Empty, Section } from '../../ui/index.ts';
import { LinesTable, OrdersTable, WaterTable } from './buy-tables.tsx';
import { CostSection } from './cost-section.tsx';

/** What to buy and when, water by fill point, and what the round costs. */
export function BuyView() {
  const book = useBook((state) => state.open?.book ?? null);
  const plans = usePlans((state) => state.plans);
  const [from, setFrom] = useState(todayHere());
  if (book === null) return null;
  if (book.rounds.length === 0)
    return <Empty title="Nothing to buy yet">Add a round on the left: what it takes is listed here.</Empty>;
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
        <h2>What to buy</h2>
        <span className="inline-field">
          <span aria-hidden="true">needed from</span>
          <input
            type="date"
            className="input"
            aria-label="Needed from"
            value={from}
            onChange={(event) => event.target.value !== '' && onFrom(event.target.value)}
          />
        </span>
        <Choice
          label="Rounds that are shown"
          value={scope}
          options={[
            { value: 'all', words: 'all rounds of the book' },
            { value: 'one', words: `${round?.name ?? 'this round'} only` },
          ]}
          onChoose={setScope}
        />
        <span className="list-tools">
          <Button
            whyNot={lines.length === 0 ? 'There is nothing to write' : null}
            onPress={() => {
              saveTable('to buy', writeBuyingTable(book, { ...list, lines })).catch(() => undefined);
            }}
          >
            <Download size={14} aria-hidden="true" /> Write as a table (CSV)
          </Button>
        </span>
      </header>
      <Section title="To order">
        <OrdersTable book={book} orders={scope === 'all' ? list.orders : ordersOf(list, round?.id)} />
      </Section>
      <Section title={`By round and week (${words.money(costUsd)})`}>
        <p className="quiet small">
          What lies in the store goes to whoever uses it first; bags are whole, and what is left of one is used later. A
          round that is not planned yet is reckoned from rates and ground, all of it on its first day.
        </p>
        <LinesTable book={book} lines={lines} />
        {book.invented && <p className="invented">Products and rates are invented and not for use.</p>}
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
      <Section title={`Water and cost of ${round?.name ?? 'the round'}`}>
        <p className="quiet">They come from its plan: plan the round first.</p>
      </Section>
    );
  return (
    <>
      <Section title={`Water of ${known.plan.roundName} by fill point`}>
        <WaterTable book={book} water={water} />
      </Section>
      <CostSection
        plan={known.plan}
        cost={cost}
        stale={stale}
        onWrite={() => {
          saveTable(`cost of ${known.plan.roundName}`, writeCostTable(cost)).catch(() => undefined);
        }}
      />
    </>
  );
}
