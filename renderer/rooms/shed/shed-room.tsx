import { type ReactNode, useMemo } from 'react';
import { ListBox, ListBoxItem } from 'react-aria-components';
import type { Book } from '../../../core/book/index.ts';
import {
  roomOfIssue,
  type ShedPlace,
  type Shelf,
  selectShelf,
  useBook,
  useChecks,
  useSelection,
} from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { shedWords } from '../../texts/shed/index.ts';
import { ChecksList, Empty, Section, Workbench } from '../../ui/index.ts';
import { applicatorShelf } from './applicators.tsx';
import { handMethodShelf } from './hand-methods.tsx';
import { machineShelf } from './machines.tsx';
import { mixShelf, productShelf } from './products.tsx';
import { fillPointShelf, rigShelf } from './rigs.tsx';
import { RoadsPanel } from './roads/roads-panel.tsx';
import type { ShelfPlan } from './shelf.ts';
import { ShelfDetails, ShelfTable } from './shelf-table.tsx';
import { TermsPanel } from './terms.tsx';
import { treatmentShelf } from './treatments.tsx';

type ShelfView = {
  readonly shelf: ShedPlace;
  readonly title: string;
  /** How many records it has; null where it is no table. */
  readonly count: (book: Book) => number | null;
  readonly table: (book: Book) => ReactNode;
  readonly details: (book: Book) => ReactNode;
};

function viewOf<Name extends Shelf>(plan: ShelfPlan<Name>): ShelfView {
  return {
    shelf: plan.shelf,
    title: plan.title,
    count: (book) => book[plan.shelf].length,
    table: (book) => <ShelfTable key={plan.shelf} plan={plan} book={book} />,
    details: (book) => <ShelfDetails key={plan.shelf} plan={plan} book={book} />,
  };
}

const SHELVES: readonly ShelfView[] = [
  viewOf(machineShelf),
  viewOf(handMethodShelf),
  viewOf(rigShelf),
  viewOf(fillPointShelf),
  viewOf(productShelf),
  viewOf(mixShelf),
  viewOf(treatmentShelf),
  viewOf(applicatorShelf),
  {
    shelf: 'terms',
    title: shedWords.room.money,
    count: () => null,
    table: (book) => <TermsPanel book={book} />,
    details: () => <Empty title={shedWords.room.wholeBook}>{shedWords.room.moneyAbout}</Empty>,
  },
  {
    shelf: 'roads',
    title: shedWords.room.roads,
    count: () => null,
    table: (book) => <RoadsPanel book={book} />,
    details: () => <Empty title={shedWords.room.wholeBook}>{shedWords.room.roadsAbout}</Empty>,
  },
];

/** The owner's room: what lawns are treated with. */
export function ShedRoom() {
  const book = useBook((state) => state.open?.book ?? null);
  const shelf = useSelection((state) => state.shelf);
  if (book === null) return null;
  const view = SHELVES.find((each) => each.shelf === shelf);
  return (
    <Workbench
      room="shed"
      title={shedWords.room.shed}
      left={<ShelfList book={book} />}
      leftLabel={shedWords.room.shelves}
      right={view?.details(book)}
      rightLabel={shedWords.room.details}
    >
      {view?.table(book)}
    </Workbench>
  );
}

function ShelfList({ book }: { readonly book: Book }) {
  const shelf = useSelection((state) => state.shelf);
  return (
    <div className="list-panel">
      <div className="list-head">
        <h2>{shedWords.room.shed}</h2>
      </div>
      <ListBox
        className="list"
        aria-label={shedWords.room.shelves}
        selectionMode="single"
        selectionBehavior="replace"
        disallowEmptySelection
        selectedKeys={[shelf]}
        onSelectionChange={(keys) => {
          const [key] = keys === 'all' ? [] : [...keys];
          const chosen = SHELVES.find((each) => each.shelf === key);
          if (chosen !== undefined) selectShelf(chosen.shelf);
        }}
      >
        {SHELVES.map((each) => (
          <ListBoxItem key={each.shelf} id={each.shelf} className="list-item" textValue={each.title}>
            <div className="shelf-row">
              <span className="row-title">{each.title}</span>
              <span className="row-figure">{each.count(book)}</span>
            </div>
          </ListBoxItem>
        ))}
      </ListBox>
      <ShedIssues />
      {book.invented && <p className="invented">{shedWords.room.invented}</p>}
    </div>
  );
}

/** What the checks find among machines, rigs, products and the like. */
function ShedIssues() {
  const all = useChecks((state) => state.issues);
  const issues = useMemo(() => all.filter((each) => roomOfIssue(each) === 'shed'), [all]);
  if (issues.length === 0) return null;
  return (
    <div className="list-issues">
      <Section title={commonWords.toCheck}>
        <ChecksList findings={issues} />
      </Section>
    </div>
  );
}
