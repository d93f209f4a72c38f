import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import { HOLDS, type Property, SITES, WEEKDAYS } from '../../../core/book/index.ts';
import { weekdayName } from '../../../core/round/calendar/index.ts';
import { counted, tagsFrom, tagText } from '../../format/index.ts';
import { changeProperty, useFormat } from '../../stores/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput, Section, Tick } from '../../ui/index.ts';
import { withOptional } from './zone-edits.ts';

type TermsProps = { readonly property: Property };
type Hold = NonNullable<Property['hold']>;
type Closed = NonNullable<Property['closed']>[number];

/** What rounds ask of a lawn: by which words it is chosen, why it is left out, which days are closed, and its notice. */
export function RoundTerms({ property }: TermsProps) {
  return (
    <Section title="In rounds">
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
    ...(closed.length === 0 ? [] : [counted(closed.length, 'closed day')]),
    ...(noticeDays === undefined ? [] : [`${counted(noticeDays, 'day')} of notice`]),
    ...(seededOn === undefined ? [] : [`seeded on ${seededOn}`]),
  ];
  return words.length === 0 ? 'Tags, hold, closed days, notice' : words.join(', ');
}

function Terms({ property }: TermsProps) {
  const put = <Key extends keyof Property & string>(key: Key, value: Property[Key] | null, label: string) =>
    changeProperty(withOptional<Property, Key>(property, key, value), {}, label);
  return (
    <>
      <Field label="Tags" note="words by which rounds choose it, commas between">
        <DraftInput
          label="Tags"
          text={tagText(property.tags)}
          onCommit={(text) => {
            const tags = tagsFrom(text);
            return put('tags', tags.length === 0 ? null : tags, 'Change tags');
          }}
        />
      </Field>
      <Sites property={property} />
      <HoldFields property={property} />
      <ClosedDays property={property} />
      <Field label="Days of notice" note="empty: as the calendar says">
        <QuantityInput
          kind="whole"
          label="Days of notice"
          value={property.noticeDays ?? null}
          optional
          onCommit={(value) => put('noticeDays', value, 'Change notice')}
        />
      </Field>
      <Field label="Seeded on" note="or to be seeded">
        <DateInput
          label="Seeded on"
          value={property.seededOn ?? ''}
          onChange={(date) => {
            put('seededOn', date === '' ? null : date, 'Change day of seeding');
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
  'paved-edge': 'paved edge',
  'south-slope': 'south slope',
  shade: 'shade',
};

function Sites({ property }: TermsProps) {
  const own = property.sites ?? [];
  return (
    <fieldset className="ticks">
      <legend className="quiet small">Warmer or cooler than the station</legend>
      {SITES.map((site) => (
        <Tick
          key={site}
          label={SITE_WORDS[site]}
          checked={own.includes(site)}
          onChange={(on) => {
            const sites = SITES.filter((each) => (each === site ? on : own.includes(each)));
            const next = withOptional<Property, 'sites'>(property, 'sites', sites.length === 0 ? null : sites);
            changeProperty(next, {}, 'Change kind of site');
          }}
        />
      ))}
    </fieldset>
  );
}

const HOLD_WORDS: Readonly<Record<Hold['why'], string>> = {
  seeding: 'seeded',
  new: 'new customer',
  'on-hold': 'on hold',
};

function HoldFields({ property }: TermsProps) {
  const { hold } = property;
  const put = (next: Hold | null) =>
    changeProperty(withOptional<Property, 'hold'>(property, 'hold', next), {}, 'Change hold');
  return (
    <>
      <Field label="Left out of rounds">
        <Choice
          label="Left out of rounds"
          value={hold?.why ?? ''}
          options={[{ value: '', words: 'no' }, ...HOLDS.map((value) => ({ value, words: HOLD_WORDS[value] }))]}
          onChoose={(why) => {
            put(why === '' ? null : { ...hold, why });
          }}
        />
      </Field>
      {hold !== undefined && (
        <Field label="to" note="empty: until it is taken away">
          <DateInput
            label="Left out to"
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
      'Change closed days',
    );
  const nameOf = (each: Closed): string =>
    each.kind === 'date' ? `${words.date(each.on)} ${each.on.slice(0, 4)}` : `${weekdayName(each.weekday)}s`;
  return (
    <fieldset className="closed-days">
      <legend className="quiet small">Closed for work</legend>
      <ul className="holidays">
        {closed.map((each, index) => (
          <li key={nameOf(each)}>
            <span>{nameOf(each)}</span>
            <DraftInput
              label={`Why it is closed on ${nameOf(each)}`}
              text={each.why}
              placeholder="mowing, watering"
              onCommit={(why) => put(closed.with(index, { ...each, why }))}
            />
            <Button
              look="quiet"
              label={`Open again on ${nameOf(each)}`}
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
      <Field label="Every">
        <Choice
          label="Close a day of the week"
          value=""
          options={[{ value: '', words: 'choose' }, ...free.map((value) => ({ value, words: weekdayName(value) }))]}
          onChoose={(weekday) => {
            if (weekday !== '') onAdd({ kind: 'weekday', weekday, why: '' });
          }}
        />
      </Field>
      <Field label="On">
        <span className="date-add">
          <DateInput label="Close a date" value={date} onChange={setDate} />
          <Button
            look="quiet"
            label="Add the closed date"
            whyNot={date === '' ? 'Choose a date first' : taken.has(date) ? 'It is closed already' : null}
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
