import { Download } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Book } from '../../../core/book/index.ts';
import { writeLedgerTable } from '../../../core/formats/index.ts';
import type { LawnYear, SeasonLedger } from '../../../core/round/ledger/index.ts';
import { todayHere } from '../../format/index.ts';
import { NotYet } from '../../next/index.ts';
import {
  saveTable,
  seasonYears,
  selectProperty,
  showSelectionOnMap,
  useBook,
  useSeasonLedger,
  useSelection,
} from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { seasonWords } from '../../texts/round/index.ts';
import { Button, Choice, Section } from '../../ui/index.ts';
import { FigureList } from './figure-list.tsx';
import { CapsSection } from './season-caps.tsx';
import { LawnSeason } from './season-lawn.tsx';
import { SeasonTotals } from './season-totals.tsx';
import { isNear, isOver, limitTitle } from './season-words.ts';
import { Share } from './share.tsx';

/** What went and will go down on every lawn in a year, against labels and caps. */
export function SeasonView() {
  const book = useBook((state) => state.open?.book ?? null);
  const [wanted, setYear] = useState<string | null>(null);
  const years = useMemo(() => (book === null ? [] : seasonYears(book)), [book]);
  const now = todayHere().slice(0, 4);
  const year = wanted ?? (years.includes(now) ? now : (years[0] ?? now));
  const { ledger, share } = useSeasonLedger(year);
  if (book === null) return null;
  const offered = years.includes(year) ? years : [year, ...years];
  return (
    <div className="ledger">
      <header className="season-head">
        <h2>{seasonWords.view.title(year)}</h2>
        <span className="inline-field">
          <span aria-hidden="true">{seasonWords.view.year}</span>
          <Choice
            label={seasonWords.view.yearOfLedger}
            value={year}
            options={offered.map((each) => ({ value: each, words: each }))}
            onChoose={setYear}
          />
        </span>
        {share < 1 && <span className="quiet small">{seasonWords.view.reckoning(Math.floor(share * 100))}</span>}
        <span className="list-tools">
          <Button
            whyNot={ledger === null ? seasonWords.view.beingReckoned : null}
            tip={seasonWords.view.tableNote}
            onPress={() => {
              if (ledger !== null)
                saveTable(seasonWords.view.fileName(year), writeLedgerTable(book, ledger)).catch(() => undefined);
            }}
          >
            <Download size={14} aria-hidden="true" /> {commonWords.writeTable}
          </Button>
        </span>
      </header>
      {ledger !== null && <Lawns book={book} ledger={ledger} />}
      <CapsSection book={book} />
      {ledger !== null && <SeasonTotals book={book} ledger={ledger} />}
    </div>
  );
}

const FILTERS = [
  { value: 'all', words: seasonWords.view.everyLawn },
  { value: 'near', words: seasonWords.view.near },
  { value: 'over', words: seasonWords.view.over },
] as const;
type Filter = (typeof FILTERS)[number]['value'];

function fits(filter: Filter, { share }: LawnYear): boolean {
  if (filter === 'all') return true;
  return filter === 'near' ? isNear(share) : isOver(share);
}

type LawnsProps = { readonly book: Book; readonly ledger: SeasonLedger };

function Lawns({ book, ledger }: LawnsProps) {
  const [filter, setFilter] = useState<Filter>('all');
  const [query, setQuery] = useState('');
  const selectedId = useSelection((state) => state.propertyId);
  const shown = useMemo(() => {
    const sought = query.trim().toLowerCase();
    return ledger.lawns
      .filter((each) => fits(filter, each) && each.name.toLowerCase().includes(sought))
      .map((each) => ({ ...each, id: each.propertyId }))
      .toSorted((one, other) => other.share - one.share);
  }, [ledger, filter, query]);
  const selected = ledger.lawns.find((each) => each.propertyId === selectedId);
  if (ledger.lawns.length === 0)
    return (
      <NotYet title={seasonWords.view.noLawnsYet} needs="lawns">
        {seasonWords.view.noLawnsAdvice}
      </NotYet>
    );
  return (
    <>
      <Section
        title={seasonWords.view.lawnsTitle(shown.length)}
        aside={
          <span className="season-tools">
            <input
              className="input"
              type="search"
              aria-label={seasonWords.view.findInLedger}
              placeholder={seasonWords.view.find}
              value={query}
              onChange={(event) => setQuery(event.target.value)}
            />
            <Choice label={seasonWords.view.lawnsShown} value={filter} options={FILTERS} onChoose={setFilter} />
          </span>
        }
      >
        {ledger.limits.length === 0 && <p className="quiet">{seasonWords.view.noLimits}</p>}
        {shown.length === 0 ? (
          <p className="quiet">
            {seasonWords.view.noLawnIs(filter === 'all' ? seasonWords.view.calledThat : seasonWords.view.soFarAlong)}
          </p>
        ) : (
          <FigureList
            label={seasonWords.view.lawns}
            nameTitle={commonWords.lawn}
            items={shown}
            selectedId={selectedId}
            onSelect={selectProperty}
            onOpen={showSelectionOnMap}
            columns={ledger.limits.map((limit) => ({
              id: limit.id,
              title: limitTitle(limit),
              show: (lawn: (typeof shown)[number]) => (
                <Share share={lawn.worst.find((each) => each.limitId === limit.id)?.share ?? 0} />
              ),
            }))}
          />
        )}
      </Section>
      {selected !== undefined && <LawnSeason book={book} ledger={ledger} lawn={selected} />}
    </>
  );
}
