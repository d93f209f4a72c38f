import { Download } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { writeRecordsTable } from '../../../core/formats/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { keepRecord, type Signed, type Typed, withdrawRecord, withTyped } from '../../../core/records/index.ts';
import { counted, todayHere } from '../../format/index.ts';
import { edit, saveTable, selectProperty, showError, showNews } from '../../stores/index.ts';
import { Button, Choice, Field, Section } from '../../ui/index.ts';
import { draftsOfOtherDays, keepAll, recordsOfDay, type StopRecord } from './record-actions.ts';

type KeepingProps = { readonly book: Book; readonly roundId: string; readonly day: PlanDay };

/** Keeping the records of a day in the book, correcting and withdrawing them. What is kept is never changed. */
export function RecordKeeping({ book, roundId, day }: KeepingProps) {
  const records = useMemo(() => recordsOfDay(book, roundId, day), [book, roundId, day]);
  const [typedBy, setTypedBy] = useState<string | null>(null);
  const [only] = book.applicators;
  const writtenBy = typedBy ?? (book.applicators.length === 1 ? (only?.name ?? '') : '');
  const others = useMemo(() => draftsOfOtherDays(book, day), [book, day]);
  const toKeep = records.filter((each) => each.state === 'to keep');
  const drafts = toKeep.flatMap((each) => (each.draft === null ? [] : [each.draft]));
  const lacking = toKeep.filter((each) => each.missing.length > 0).length;
  return (
    <Section title="Keep in the book">
      <p className="small">
        A record that is kept is never changed, and undo does not take it back: a correction is another version beside
        it.
      </p>
      <p className="small">{stateWords(records)}</p>
      <Field label="Written by">
        <input
          className="input"
          aria-label="Written by"
          value={writtenBy}
          maxLength={200}
          onChange={(event) => setTypedBy(event.target.value)}
        />
      </Field>
      <p className="record-buttons">
        <Button
          look="main"
          whyNot={whyNotKeep(drafts.length, writtenBy)}
          onPress={() => done(keepAll(book, drafts, signedBy(writtenBy, '')))}
        >
          {drafts.length === 0 ? 'Keep records' : `Keep ${counted(drafts.length, 'record')}`}
        </Button>
      </p>
      {lacking > 0 && (
        <p className="caution small">
          {lacking} of them {lacking === 1 ? 'lacks' : 'lack'} something: see Missing on the sheet. What is entered
          later makes a corrected version.
        </p>
      )}
      <OneRecord book={book} records={records} writtenBy={writtenBy} />
      {others.length > 0 && (
        <p className="record-buttons">
          <span className="small">
            {counted(others.length, 'visit')} of other days {others.length === 1 ? 'has' : 'have'} no record; Record
            versions shows them lawn by lawn.
          </span>
          <Button
            whyNot={whyNotKeep(others.length, writtenBy)}
            onPress={() => done(keepAll(book, others, signedBy(writtenBy, '')))}
          >
            Keep those of other days
          </Button>
        </p>
      )}
      <p className="record-buttons">
        <Button
          whyNot={book.applicationRecords.length === 0 ? 'No record is kept yet' : null}
          tip="Every version of every record of the book, a row for each product"
          onPress={() => {
            saveTable('application records', writeRecordsTable(book, book.applicationRecords)).catch(() => undefined);
          }}
        >
          <Download size={14} aria-hidden="true" /> Write all records as a table (CSV)
        </Button>
      </p>
    </Section>
  );
}

function stateWords(records: readonly StopRecord[]): string {
  const count = (...states: readonly StopRecord['state'][]): number =>
    records.filter((each) => states.includes(each.state)).length;
  return [
    `${counted(records.length, 'stop')}`,
    `${count('kept', 'otherwise')} kept`,
    ...(count('otherwise') > 0 ? [`${count('otherwise')} of them otherwise by now`] : []),
    ...(count('withdrawn') > 0 ? [`${count('withdrawn')} withdrawn`] : []),
    `${count('to keep')} done and not kept`,
    `${count('to do')} not written down yet`,
    ...(count('left out') > 0 ? [`${count('left out')} left out`] : []),
  ].join(', ');
}

function whyNotKeep(count: number, writtenBy: string): string | null {
  if (count === 0) return 'No stop is done without a record: mark stops done in the Day room under Under way';
  return writtenBy.trim() === '' ? 'A record says who wrote it: enter your name' : null;
}

function signedBy(writtenBy: string, why: string): Signed {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return { writtenAt: `${todayHere(now)}T${two(now.getHours())}:${two(now.getMinutes())}`, writtenBy, why };
}

/** Makes the edit of an answer, or tells why there is none; true where it was made. */
function done(answer: ReturnType<typeof keepAll>): boolean {
  const made: Result<{ readonly label: string }> = answer.ok ? edit(answer.value) : answer;
  if (made.ok) showNews(made.value.label);
  else showError(made.error);
  return made.ok;
}

const STATE_WORDS: Readonly<Record<StopRecord['state'], string>> = {
  kept: 'kept',
  otherwise: 'kept, otherwise by now',
  withdrawn: 'withdrawn',
  'to keep': 'not kept',
  'to do': 'not written down',
  'left out': 'left out',
};

type OneProps = {
  readonly book: Book;
  readonly records: readonly StopRecord[];
  readonly writtenBy: string;
};

/** One record: typing in what the book has no place for, correcting, withdrawing. */
function OneRecord({ book, records, writtenBy }: OneProps) {
  const [chosen, choose] = useState('');
  const shown =
    records.find((each) => each.subject.propertyId === chosen) ??
    records.find((each) => each.state === 'otherwise') ??
    records.find((each) => each.draft?.isWritten === true);
  if (shown === undefined) return null;
  return (
    <>
      <h4>One record</h4>
      <Choice
        label="Record of"
        value={shown.subject.propertyId}
        options={records.map((each) => ({
          value: each.subject.propertyId,
          words: `${each.number ?? ''} ${each.name}: ${STATE_WORDS[each.state]}`.trim(),
        }))}
        onChoose={(id) => {
          choose(id);
          selectProperty(id);
        }}
      />
      <Correction
        key={`${shown.subject.propertyId} ${shown.last?.id}`}
        book={book}
        shown={shown}
        writtenBy={writtenBy}
      />
    </>
  );
}

type CorrectionProps = { readonly book: Book; readonly shown: StopRecord; readonly writtenBy: string };

function Correction({ book, shown, writtenBy }: CorrectionProps) {
  const { draft, last, subject } = shown;
  const [why, setWhy] = useState('');
  const [typed, setTyped] = useState<readonly Typed[]>([]);
  if (draft === null || !draft.isWritten) return <p className="quiet small">{NOTHING[shown.state] ?? ''}</p>;
  const next = withTyped(draft, typed);
  const unsigned = writtenBy.trim() === '' ? 'Enter your name above' : null;
  const unfounded = last !== null && why.trim() === '' ? 'Say why first' : unsigned;
  const isSame = shown.state === 'kept' && typed.every((each) => each.text.trim() === '');
  const keep = () => {
    selectProperty(subject.propertyId);
    const kept = keepRecord(book, next, signedBy(writtenBy, why));
    done(kept.ok ? { ok: true, value: kept.value.action } : kept);
  };
  const withdraw = () => {
    selectProperty(subject.propertyId);
    const gone = withdrawRecord(book, subject, signedBy(writtenBy, why));
    done(gone.ok ? { ok: true, value: gone.value.action } : gone);
  };
  return (
    <>
      {shown.changes > 0 && <p className="caution small">{counted(shown.changes, 'element')} otherwise by now.</p>}
      <TypedElements shown={shown} typed={typed} onTyped={setTyped} />
      {last !== null && (
        <Field label="Why">
          <input
            className="input"
            aria-label="Why it is corrected or withdrawn"
            value={why}
            maxLength={4000}
            onChange={(event) => setWhy(event.target.value)}
          />
        </Field>
      )}
      <p className="record-buttons">
        <Button whyNot={isSame ? 'The record that is kept says the same' : unfounded} onPress={keep}>
          {last === null ? 'Keep this record' : 'Keep a corrected version'}
        </Button>
        {last !== null && last.withdrawn !== true && (
          <Button look="danger" whyNot={unfounded} onPress={withdraw}>
            Withdraw
          </Button>
        )}
      </p>
    </>
  );
}

const NOTHING: Readonly<Partial<Record<StopRecord['state'], string>>> = {
  'to do': 'Nothing is written down of this stop yet: mark it done in the Day room under Under way.',
  'left out': 'The lawn was left out, so there is nothing to record.',
  otherwise: 'The visit was taken back since. Withdraw the record on another stop, or mark this one done again.',
  kept: 'The visit was taken back since.',
  withdrawn: 'The record is withdrawn.',
};

type TypedProps = {
  readonly shown: StopRecord;
  readonly typed: readonly Typed[];
  readonly onTyped: (typed: readonly Typed[]) => void;
};

/** Words for what is missing and can be typed in; figures are corrected in Under way. */
function TypedElements({ shown: { draft }, typed, onTyped }: TypedProps) {
  const places = [
    ...(draft?.elements ?? []).map((element) => ({ element, product: null })),
    ...(draft?.products ?? []).flatMap((product) => product.elements.map((element) => ({ element, product }))),
  ].filter(({ element }) => element.canType && element.answer.kind === 'missing');
  if (places.length === 0) return null;
  return (
    <details className="left-out">
      <summary>Type in what is missing ({places.length})</summary>
      {places.map(({ element, product }) => {
        const place = {
          elementId: element.id,
          ...(product === null ? {} : { treatmentId: product.treatmentId, productId: product.productId }),
        };
        const isHere = (each: Typed): boolean =>
          each.elementId === place.elementId &&
          each.treatmentId === product?.treatmentId &&
          each.productId === product?.productId;
        const label = product === null ? element.words : `${element.words} of ${product.name}`;
        return (
          <Field key={JSON.stringify(place)} label={label}>
            <input
              className="input"
              aria-label={label}
              maxLength={4000}
              value={typed.find(isHere)?.text ?? ''}
              onChange={(event) =>
                onTyped([...typed.filter((each) => !isHere(each)), { ...place, text: event.target.value }])
              }
            />
          </Field>
        );
      })}
    </details>
  );
}
