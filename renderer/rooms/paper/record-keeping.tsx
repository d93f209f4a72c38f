import { Download } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Result } from '../../../core/base/index.ts';
import type { Book } from '../../../core/book/index.ts';
import { writeRecordsTable } from '../../../core/formats/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { keepRecord, type Signed, type Typed, withdrawRecord, withTyped } from '../../../core/records/index.ts';
import { CommandButton, useOffer } from '../../commands/index.ts';
import { todayHere } from '../../format/index.ts';
import { edit, saveTable, selectProperty, showError, showNews } from '../../stores/index.ts';
import { commonWords, paperWords } from '../../texts/index.ts';
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
  useOffer('records.keep', {
    whyNot: whyNotKeep(drafts.length, writtenBy),
    run: () => done(keepAll(book, drafts, signedBy(writtenBy, ''))),
  });
  useOffer('records.keep-others', {
    whyNot: whyNotKeep(others.length, writtenBy),
    run: () => done(keepAll(book, others, signedBy(writtenBy, ''))),
  });
  useOffer('records.table', {
    whyNot: book.applicationRecords.length === 0 ? paperWords.records.noneKept : null,
    run: () => void saveTable(paperWords.records.fileName, writeRecordsTable(book, book.applicationRecords)),
  });
  const lacking = toKeep.filter((each) => each.missing.length > 0).length;
  return (
    <Section title={paperWords.records.title}>
      <p className="small">{paperWords.records.about}</p>
      <p className="small">{stateWords(records)}</p>
      <Field label={paperWords.records.writtenBy}>
        <input
          className="input"
          aria-label={paperWords.records.writtenBy}
          value={writtenBy}
          maxLength={200}
          onChange={(event) => setTypedBy(event.target.value)}
        />
      </Field>
      <p className="record-buttons">
        <CommandButton id="records.keep" look="main">
          {drafts.length === 0 ? paperWords.records.keepRecords : paperWords.records.keep(drafts.length)}
        </CommandButton>
      </p>
      {lacking > 0 && <p className="caution small">{paperWords.records.lacking(lacking)}</p>}
      <OneRecord book={book} records={records} writtenBy={writtenBy} />
      {others.length > 0 && (
        <p className="record-buttons">
          <span className="small">{paperWords.records.otherDays(others.length)}</span>
          <CommandButton id="records.keep-others">{paperWords.records.keepOtherDays}</CommandButton>
        </p>
      )}
      <p className="record-buttons">
        <CommandButton id="records.table" tip={paperWords.records.tableNote}>
          <Download size={14} aria-hidden="true" /> {paperWords.records.writeAll}
        </CommandButton>
      </p>
    </Section>
  );
}

function stateWords(records: readonly StopRecord[]): string {
  const count = (...states: readonly StopRecord['state'][]): number =>
    records.filter((each) => states.includes(each.state)).length;
  return [
    `${commonWords.stops(records.length)}`,
    paperWords.records.kept(count('kept', 'otherwise')),
    ...(count('otherwise') > 0 ? [paperWords.records.keptOtherwise(count('otherwise'))] : []),
    ...(count('withdrawn') > 0 ? [paperWords.records.withdrawn(count('withdrawn'))] : []),
    paperWords.records.toKeep(count('to keep')),
    paperWords.records.toDo(count('to do')),
    ...(count('left out') > 0 ? [paperWords.records.leftOut(count('left out'))] : []),
  ].join(', ');
}

function whyNotKeep(count: number, writtenBy: string): string | null {
  if (count === 0) return paperWords.records.needsDone;
  return writtenBy.trim() === '' ? paperWords.records.needsWriter : null;
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
  otherwise: paperWords.records.stateOtherwise,
  withdrawn: 'withdrawn',
  'to keep': paperWords.records.stateToKeep,
  'to do': paperWords.records.stateToDo,
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
      <h4>{paperWords.records.oneRecord}</h4>
      <Choice
        label={paperWords.records.recordOf}
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
  const unsigned = writtenBy.trim() === '' ? paperWords.records.writerFirst : null;
  const unfounded = last !== null && why.trim() === '' ? paperWords.records.whyFirst : unsigned;
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
      {shown.changes > 0 && <p className="caution small">{paperWords.records.otherwiseByNow(shown.changes)}</p>}
      <TypedElements shown={shown} typed={typed} onTyped={setTyped} />
      {last !== null && (
        <Field label={paperWords.records.why}>
          <input
            className="input"
            aria-label={paperWords.records.whyLabel}
            value={why}
            maxLength={4000}
            onChange={(event) => setWhy(event.target.value)}
          />
        </Field>
      )}
      <p className="record-buttons">
        <Button whyNot={isSame ? paperWords.records.sameRecord : unfounded} onPress={keep}>
          {last === null ? paperWords.records.keepThis : paperWords.records.keepCorrected}
        </Button>
        {last !== null && last.withdrawn !== true && (
          <Button look="danger" whyNot={unfounded} onPress={withdraw}>
            {paperWords.records.withdraw}
          </Button>
        )}
      </p>
    </>
  );
}

const NOTHING: Readonly<Partial<Record<StopRecord['state'], string>>> = {
  'to do': paperWords.records.toDoAdvice,
  'left out': paperWords.records.leftOutAdvice,
  otherwise: paperWords.records.otherwiseAdvice,
  kept: paperWords.records.keptAdvice,
  withdrawn: paperWords.records.withdrawnAdvice,
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
      <summary>{paperWords.records.typeMissing(places.length)}</summary>
      {places.map(({ element, product }) => {
        const place = {
          elementId: element.id,
          ...(product === null ? {} : { treatmentId: product.treatmentId, productId: product.productId }),
        };
        const isHere = (each: Typed): boolean =>
          each.elementId === place.elementId &&
          each.treatmentId === product?.treatmentId &&
          each.productId === product?.productId;
        const label = product === null ? element.words : paperWords.records.elementOf(element.words, product.name);
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
