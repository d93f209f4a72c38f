import type { Property } from '../../../core/book/index.ts';
import type { Paper, Print, SheetScope } from '../../../core/reports/index.ts';
import {
  changeSettings,
  selectDay,
  selectProperty,
  selectRound,
  useBook,
  useCurrentDay,
  useCurrentPlan,
  useCurrentRound,
  useFormat,
  useHost,
} from '../../stores/index.ts';
import { paperWords } from '../../texts/index.ts';
import { Choice, type ChoiceOption, Field, Section, Tick } from '../../ui/index.ts';
import { FirmFields } from './firm-fields.tsx';
import { RecordKeeping } from './record-keeping.tsx';
import { passOptions } from './sheet-passes.ts';
import { TemplateFields } from './template-fields.tsx';

type FactsProps = {
  readonly kindId: string;
  /** What the sheet is chosen by; null where there is no sheet. */
  readonly scope: SheetScope | null;
  readonly property: Property | null;
  readonly forCustomer: boolean;
  readonly onForCustomer: (forCustomer: boolean) => void;
  /** Which head's passes are drawn on the plan. */
  readonly passesOf: string;
  readonly onPassesOf: (passesOf: string) => void;
  readonly year: string;
  readonly years: readonly string[];
  readonly onYear: (year: string) => void;
};

/** What the sheet is of, on what it is printed, and what to mind. */
export function SheetFacts(props: FactsProps) {
  return (
    <div className="inspector">
      <ChosenBy {...props} />
      <OfficeSections kindId={props.kindId} />
      <PaperSection />
      <Section title={paperWords.facts.mind}>
        <p className="small">
          {props.kindId === 'application-records' || props.kindId === 'record-history' ? MIND_RECORDS : MIND_PLANNED}
        </p>
      </Section>
    </div>
  );
}

const MIND_PLANNED = paperWords.facts.planned;
const MIND_RECORDS = paperWords.facts.ownState;

/** What the office adds beside a sheet: records that are kept, its own texts, the firm. */
function OfficeSections({ kindId }: { readonly kindId: string }) {
  const book = useBook((state) => state.open?.book ?? null);
  const known = useCurrentPlan();
  const day = useCurrentDay();
  if (book === null) return null;
  if (kindId === 'application-records') {
    return (
      <>
        {known !== null && day !== null && (
          <RecordKeeping key={`${day.date} ${day.rigId}`} book={book} roundId={known.plan.roundId} day={day} />
        )}
        <FirmFields book={book} />
      </>
    );
  }
  if (kindId !== 'notices' && kindId !== 'postings') return null;
  return (
    <>
      <TemplateFields book={book} what={kindId === 'notices' ? paperWords.facts.notice : paperWords.facts.posting} />
      <FirmFields book={book} />
    </>
  );
}

function ChosenBy({ scope, property, ...more }: FactsProps) {
  switch (scope) {
    case 'day':
      return <DaySection />;
    case 'property':
      return property === null ? null : <LawnSection property={property} {...more} />;
    case 'round':
      return <RoundSection />;
    case 'year':
      return <YearSection year={more.year} years={more.years} onYear={more.onYear} />;
    case 'book':
    case null:
      return null;
  }
}

function LawnSection({
  kindId,
  property,
  forCustomer,
  onForCustomer,
  passesOf,
  onPassesOf,
}: Omit<FactsProps, 'scope'> & { readonly property: Property }) {
  const book = useBook((state) => state.open?.book ?? null);
  if (book === null) return null;
  return (
    <Section title={paperWords.facts.lawn}>
      <Choice
        label={paperWords.facts.lawn}
        value={property.id}
        options={book.properties.map(({ id, name }) => ({ value: id, words: name }))}
        onChoose={selectProperty}
      />
      {kindId === 'measure-sheet' && (
        <>
          <Tick label={paperWords.facts.customerCopy} checked={forCustomer} onChange={onForCustomer} />
          <Field label={paperWords.facts.planShows}>
            <Choice
              label={paperWords.facts.passesLabel}
              value={passesOf}
              options={passOptions(book)}
              onChoose={onPassesOf}
            />
          </Field>
        </>
      )}
    </Section>
  );
}

function DaySection() {
  const known = useCurrentPlan();
  const day = useCurrentDay();
  const words = useFormat();
  const days = known?.plan.days ?? [];
  if (day === null) return null;
  return (
    <Section title={paperWords.facts.day}>
      <Choice
        label={paperWords.facts.dayLabel}
        value={`${day.date} ${day.rigId}`}
        options={days.map((each) => ({
          value: `${each.date} ${each.rigId}`,
          words: `${words.date(each.date)}, ${each.rigName}`,
        }))}
        onChoose={(key) => {
          const found = days.find((each) => `${each.date} ${each.rigId}` === key);
          if (found !== undefined) selectDay(found.date, found.rigId);
        }}
      />
    </Section>
  );
}

function YearSection({ year, years, onYear }: Pick<FactsProps, 'year' | 'years' | 'onYear'>) {
  return (
    <Section title={paperWords.facts.year}>
      <Choice
        label={paperWords.facts.year}
        value={year}
        options={years.map((each) => ({ value: each, words: each }))}
        onChoose={onYear}
      />
    </Section>
  );
}

function RoundSection() {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  if (book === null || round === null) return null;
  return (
    <Section title={paperWords.facts.round}>
      <Choice
        label={paperWords.facts.round}
        value={round.id}
        options={book.rounds.map(({ id, name }) => ({ value: id, words: name }))}
        onChoose={selectRound}
      />
    </Section>
  );
}

const PAPER_OPTIONS: readonly ChoiceOption<Paper>[] = [
  { value: 'letter', words: paperWords.facts.letter },
  { value: 'a4', words: paperWords.facts.a4 },
];
const PRINT_OPTIONS: readonly ChoiceOption<Print>[] = [
  { value: 'normal', words: paperWords.facts.printNormal },
  { value: 'large', words: paperWords.facts.printLarge },
];

/** Kept as settings of this machine: the printer is the same for all books. */
function PaperSection() {
  const paper = useHost((state) => state.settings.paper);
  const print = useHost((state) => state.settings.print);
  return (
    <Section title={paperWords.facts.paper}>
      <Field label={paperWords.facts.size}>
        <Choice
          label={paperWords.facts.sizeLabel}
          value={paper}
          options={PAPER_OPTIONS}
          onChoose={(chosen) => changeSettings({ paper: chosen })}
        />
      </Field>
      <Field label={paperWords.facts.print}>
        <Choice
          label={paperWords.facts.printLabel}
          value={print}
          options={PRINT_OPTIONS}
          onChoose={(chosen) => changeSettings({ print: chosen })}
        />
      </Field>
    </Section>
  );
}
