import { useState } from 'react';
import type { Book, Visit } from '../../../core/book/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { formatBearing, parseBearing } from '../../../core/units/index.ts';
import { putRecord } from '../../stores/index.ts';
import { underWayWords } from '../../texts/day/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Choice, type ChoiceOption, DraftInput, Field, QuantityInput, Section } from '../../ui/index.ts';

type OnSiteProps = { readonly book: Book; readonly day: PlanDay };
type Conditions = NonNullable<Visit['conditions']>;

/** Weather as it was read on site, and who applied: what records ask for and no plan knows. */
export function OnSite({ book, day }: OnSiteProps) {
  const [chosen, choose] = useState('');
  const done = book.visits.filter(
    (each) => each.on === day.date && each.rigId === day.rigId && each.outcome.kind === 'done',
  );
  const shown = done.find((each) => each.id === chosen) ?? done.at(-1);
  if (shown === undefined) return null;
  return (
    <Section title={underWayWords.onSite.title}>
      <Choice
        label={underWayWords.onSite.stopDone}
        value={shown.id}
        options={done.map((visit) => ({ value: visit.id, words: stopWords(book, day, visit) }))}
        onChoose={choose}
      />
      <Weather key={`weather ${shown.id}`} visit={shown} />
      <Persons key={`persons ${shown.id}`} book={book} visit={shown} />
    </Section>
  );
}

/** With its number where the plan still has the stop: a round that is planned again leaves out what is done. */
function stopWords(book: Book, day: PlanDay, { propertyId }: Visit): string {
  const stop = day.stops.find((each) => each.propertyId === propertyId);
  if (stop !== undefined) return commonWords.stop(stop.number, stop.name);
  return book.properties.find((each) => each.id === propertyId)?.name ?? propertyId;
}

function putVisit(visit: Visit, label: string) {
  return putRecord('visits', visit, label);
}

function withConditions(visit: Visit, key: keyof Conditions, value: number | string | null): Visit {
  const { [key]: _, ...rest } = visit.conditions ?? {};
  const conditions: Conditions = value === null ? rest : { ...rest, [key]: value };
  const { conditions: __, ...bare } = visit;
  return Object.keys(conditions).length === 0 ? bare : { ...bare, conditions };
}

function Weather({ visit }: { readonly visit: Visit }) {
  const { windMph, windFromDeg, airF, sky } = visit.conditions ?? {};
  const put = (key: keyof Conditions, value: number | string | null) =>
    putVisit(withConditions(visit, key, value), underWayWords.onSite.changeWeather);
  return (
    <>
      <Field label={underWayWords.onSite.wind}>
        <QuantityInput
          label={underWayWords.onSite.wind}
          kind="speed"
          value={windMph ?? null}
          optional
          onCommit={(value) => put('windMph', value)}
        />
      </Field>
      <Field label={underWayWords.onSite.windFrom} note={underWayWords.onSite.windFromNote}>
        <DraftInput
          label={underWayWords.onSite.windFrom}
          text={windFromDeg === undefined ? '' : formatBearing(windFromDeg)}
          onCommit={(text) => {
            if (text === '') return put('windFromDeg', null);
            const bearing = parseBearing(text);
            return bearing.ok ? put('windFromDeg', bearing.value) : bearing;
          }}
        />
      </Field>
      <Field label={underWayWords.onSite.airTemperature}>
        <QuantityInput
          label={underWayWords.onSite.airTemperature}
          kind="temperature"
          value={airF ?? null}
          optional
          onCommit={(value) => put('airF', value)}
        />
      </Field>
      <Field label={underWayWords.onSite.sky}>
        <DraftInput
          label={underWayWords.onSite.sky}
          text={sky ?? ''}
          placeholder={underWayWords.onSite.clear}
          onCommit={(text) => put('sky', text === '' ? null : text)}
        />
      </Field>
    </>
  );
}

const NOBODY = '';

/** Who applied, who supervised, and who helped. */
function Persons({ book, visit }: { readonly book: Book; readonly visit: Visit }) {
  const persons = book.applicators.map(({ id, name }): ChoiceOption<string> => ({ value: id, words: name }));
  const own = book.applicators.filter((each) => each.rigIds?.includes(visit.rigId) === true);
  const usual = own.length === 1 ? underWayWords.onSite.ofRig(own[0]?.name ?? '') : underWayWords.onSite.nobodyNamed;
  const put = (key: 'applicatorId' | 'supervisorId', id: string) => {
    const { [key]: _, ...rest } = visit;
    putVisit(id === NOBODY ? rest : { ...rest, [key]: id }, underWayWords.onSite.changeApplicator);
  };
  return (
    <>
      <Field label={underWayWords.onSite.appliedBy}>
        <Choice
          label={underWayWords.onSite.appliedBy}
          value={visit.applicatorId ?? NOBODY}
          options={[{ value: NOBODY, words: usual }, ...persons]}
          onChoose={(id) => put('applicatorId', id)}
        />
      </Field>
      <Field label={underWayWords.onSite.supervisedBy} note={underWayWords.onSite.supervisorNote}>
        <Choice
          label={underWayWords.onSite.supervisedBy}
          value={visit.supervisorId ?? NOBODY}
          options={[{ value: NOBODY, words: underWayWords.onSite.nobody }, ...persons]}
          onChoose={(id) => put('supervisorId', id)}
        />
      </Field>
      <Field label={underWayWords.onSite.helpers} note={underWayWords.onSite.helpersNote}>
        <DraftInput
          label={underWayWords.onSite.helpers}
          text={(visit.helpers ?? []).join(', ')}
          onCommit={(text) => {
            const helpers = text.split(',').flatMap((each) => (each.trim() === '' ? [] : [each.trim()]));
            const { helpers: _, ...rest } = visit;
            return putVisit(helpers.length === 0 ? rest : { ...rest, helpers }, underWayWords.onSite.changeHelpers);
          }}
        />
      </Field>
    </>
  );
}
