import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import { HOLDS, type Property, SITES, WEEKDAYS } from '../../../core/book/index.ts';
import { weekdayName } from '../../../core/round/calendar/index.ts';
import { tagsFrom, tagText } from '../../format/index.ts';
import { changeProperty, useFormat } from '../../stores/index.ts';
import { estimateWords } from '../../texts/ground/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { withOptional } from './zone-edits.ts';

type TermsProps = { readonly property: Property };
type Hold = NonNullable<Property['hold']>;
type Closed = NonNullable<Property['closed']>[number];

/** What rounds ask of a lawn: by which words it is chosen, why it is left out, which days are closed, and its notice. */
export function RoundTerms({ property }: TermsProps) {
  return (
    <Section title={estimateWords.roundTerms.inRounds}>
      <details className="left-out">
        <summary>{termsWords(property)}</summary>
        <Terms property={property} />
      </details>
    </Section>
  );
}

/** What the lawn has of its own, in a few words. */
function termsWords({ tags = [], sites = [], hold, closed = [], noticeDays, seededOn }: Property): string {
  const words = [
    ...(hold === undefined ? [] : [HOLD_WORDS[hold.why]]),
    ...tags,
    ...sites.map((site) => SITE_WORDS[site]),
    ...(closed.length === 0 ? [] : [estimateWords.roundTerms.closedDays(closed.length)]),
    ...(noticeDays === undefined ? [] : [estimateWords.roundTerms.notice(noticeDays)]),
    ...(seededOn === undefined ? [] : [estimateWords.roundTerms.seeded(seededOn)]),
  ];
  return words.length === 0 ? estimateWords.roundTerms.summaryWhenNone : words.join(', ');
}

function Terms({ property }: TermsProps) {
  const put = <Key extends keyof Property & string>(key: Key, value: Property[Key] | null, label: string) =>
    changeProperty(withOptional<Property, Key>(property, key, value), {}, label);
  return (
    <>
      <Field label={estimateWords.roundTerms.tags} note={estimateWords.roundTerms.tagsNote}>
        <DraftInput
          label={estimateWords.roundTerms.tags}
          text={tagText(property.tags)}
          onCommit={(text) => {
            const tags = tagsFrom(text);
            return put('tags', tags.length === 0 ? null : tags, estimateWords.roundTerms.changeTags);
          }}
        />
      </Field>
      <Sites property={property} />
      <HoldFields property={property} />
      <ClosedDays property={property} />
      <Field label={estimateWords.roundTerms.noticeDays} note={estimateWords.roundTerms.noticeDaysNote}>
        <QuantityInput
          kind="whole"
          label={estimateWords.roundTerms.noticeDays}
          value={property.noticeDays ?? null}
          optional
          onCommit={(value) => put('noticeDays', value, estimateWords.roundTerms.changeNotice)}
        />
      </Field>
      <Field label={estimateWords.roundTerms.seededLabel} note={estimateWords.roundTerms.seededNote}>
        <DateInput
          label={estimateWords.roundTerms.seededLabel}
          value={property.seededOn ?? ''}
          onChange={(date) => {
            put('seededOn', date === '' ? null : date, estimateWords.roundTerms.changeSeeded);
          }}
        />
      </Field>
    </>
  );
}

type DateInputProps = { readonly label: string; readonly value: string; readonly onChange: (date: string) => void };

function DateInput({ label, value, onChange }: DateInputProps) {
  return (
    <input
      type="date"
      className="input"
      aria-label={label}
      value={value}
      onChange={(event) => onChange(event.target.value)}
    />
  );
}

const SITE_WORDS: Readonly<Record<(typeof SITES)[number], string>> = {
  'paved-edge': estimateWords.roundTerms.pavedEdge,
  'south-slope': estimateWords.roundTerms.southSlope,
  shade: estimateWords.roundTerms.shade,
};

function Sites({ property }: TermsProps) {
  const own = property.sites ?? [];
  return (
    <fieldset className="ticks">
      <legend className="quiet small">{estimateWords.roundTerms.sites}</legend>
      {SITES.map((site) => (
        <Tick
          key={site}
          label={SITE_WORDS[site]}
          checked={own.includes(site)}
          onChange={(on) => {
            const sites = SITES.filter((each) => (each === site ? on : own.includes(each)));
            const next = withOptional<Property, 'sites'>(property, 'sites', sites.length === 0 ? null : sites);
            changeProperty(next, {}, estimateWords.roundTerms.changeSites);
          }}
        />
      ))}
    </fieldset>
  );
}

const HOLD_WORDS: Readonly<Record<Hold['why'], string>> = {
  seeding: estimateWords.roundTerms.seeding,
  new: estimateWords.roundTerms.newCustomer,
  'on-hold': estimateWords.roundTerms.onHold,
};

function HoldFields({ property }: TermsProps) {
  const { hold } = property;
  const put = (next: Hold | null) =>
    changeProperty(withOptional<Property, 'hold'>(property, 'hold', next), {}, estimateWords.roundTerms.changeHold);
  return (
    <>
      <Field label={estimateWords.roundTerms.leftOut}>
        <Choice
          label={estimateWords.roundTerms.leftOut}
          value={hold?.why ?? ''}
          options={[
            { value: '', words: estimateWords.roundTerms.notLeftOut },
            ...HOLDS.map((value) => ({ value, words: HOLD_WORDS[value] })),
          ]}
          onChoose={(why) => {
            put(why === '' ? null : { ...hold, why });
          }}
        />
      </Field>
      {hold !== undefined && (
        <Field label={estimateWords.roundTerms.until} note={estimateWords.roundTerms.untilNote}>
          <DateInput
            label={estimateWords.roundTerms.untilLabel}
            value={hold.until ?? ''}
            onChange={(until) => {
              put(until === '' ? { why: hold.why } : { ...hold, until });
            }}
          />
        </Field>
      )}
    </>
  );
}

/** Days of the week and dates on which no work may be done, each with why. */
function ClosedDays({ property }: TermsProps) {
  const words = useFormat();
  const closed = property.closed ?? [];
  const put = (next: readonly Closed[]) =>
    changeProperty(
      withOptional<Property, 'closed'>(property, 'closed', next.length === 0 ? null : next),
      {},
      estimateWords.roundTerms.changeClosedDays,
    );
  const nameOf = (each: Closed): string =>
    each.kind === 'date' ? `${words.date(each.on)} ${each.on.slice(0, 4)}` : `${weekdayName(each.weekday)}s`;
  return (
    <fieldset className="closed-days">
      <legend className="quiet small">{estimateWords.roundTerms.closed}</legend>
      <ul className="holidays">
        {closed.map((each, index) => (
          <li key={nameOf(each)}>
            <span>{nameOf(each)}</span>
            <DraftInput
              label={estimateWords.roundTerms.whyClosed(nameOf(each))}
              text={each.why}
              placeholder={estimateWords.roundTerms.whyPlaceholder}
              onCommit={(why) => put(closed.with(index, { ...each, why }))}
            />
            <Button
              look="quiet"
              label={estimateWords.roundTerms.openAgain(nameOf(each))}
              onPress={() => put(closed.toSpliced(index, 1))}
            >
              <X size={14} aria-hidden="true" />
            </Button>
          </li>
        ))}
      </ul>
      <AddClosed closed={closed} onAdd={(each) => put([...closed, each])} />
    </fieldset>
  );
}

type AddClosedProps = { readonly closed: readonly Closed[]; readonly onAdd: (each: Closed) => void };

function AddClosed({ closed, onAdd }: AddClosedProps) {
  const [date, setDate] = useState('');
  const taken = new Set(closed.map((each) => (each.kind === 'date' ? each.on : each.weekday)));
  const free = WEEKDAYS.filter((each) => !taken.has(each));
  return (
    <>
      <Field label={estimateWords.roundTerms.every}>
        <Choice
          label={estimateWords.roundTerms.closeWeekday}
          value=""
          options={[
            { value: '', words: estimateWords.roundTerms.choose },
            ...free.map((value) => ({ value, words: weekdayName(value) })),
          ]}
          onChoose={(weekday) => {
            if (weekday !== '') onAdd({ kind: 'weekday', weekday, why: '' });
          }}
        />
      </Field>
      <Field label={estimateWords.roundTerms.on}>
        <span className="date-add">
          <DateInput label={estimateWords.roundTerms.closeDate} value={date} onChange={setDate} />
          <Button
            look="quiet"
            label={estimateWords.roundTerms.addClosedDate}
            whyNot={
              date === ''
                ? estimateWords.roundTerms.chooseDateFirst
                : taken.has(date)
                  ? estimateWords.roundTerms.closedAlready
                  : null
            }
            onPress={() => {
              onAdd({ kind: 'date', on: date, why: '' });
              setDate('');
            }}
          >
            <Plus size={14} aria-hidden="true" />
          </Button>
        </span>
      </Field>
    </>
  );
}
