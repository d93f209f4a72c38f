import { Plus, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { ok } from '../../../../core/base/index.ts';
import type { Book, Round } from '../../../../core/book/index.ts';
import { PUBLISHED_TIMINGS, stationNames } from '../../../../core/round/timing/index.ts';
import { edit, freshId, putRecord, showError, showNews } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { Button, Choice, Field, Section, Tick } from '../../../ui/index.ts';
import { completed, draftOf, emptyDraft, missingOf, type TimingDraft } from './timing-draft.ts';
import { withoutTiming } from './timing-edits.ts';
import { TimingForm } from './timing-form.tsx';

type ChoiceProps = { readonly book: Book; readonly round: Round };

/** Says which timing a round has; null for none. */
export function setTiming(round: Round, timingId: string | null): boolean {
  const { timingId: _, ...rest } = round;
  const done = putRecord('rounds', timingId === null ? rest : { ...rest, timingId }, whenWords.choice.changeOfRound);
  if (!done.ok) showError(done.error);
  return done.ok;
}

/** Says whether days after the last useful one are closed; else they count as late. */
function setOnlyInWindow(round: Round, isOn: boolean): void {
  const { onlyInWindow: _, ...rest } = round;
  const done = putRecord('rounds', isOn ? { ...rest, onlyInWindow: true } : rest, whenWords.choice.changeAfterLast);
  if (!done.ok) showError(done.error);
}

/** The timing of the round: one of the book, or none. */
export function TimingChoice({ book, round, onNew }: ChoiceProps & { readonly onNew: () => void }) {
  const options = [
    { value: '', words: whenWords.choice.noTiming },
    ...book.timings.map(({ id, name }) => ({ value: id, words: name })),
  ];
  return (
    <div className="when-choice">
      <Choice
        label={whenWords.choice.timingRound}
        value={round.timingId ?? ''}
        options={options}
        onChoose={(id) => {
          setTiming(round, id === '' ? null : id);
        }}
      />
      {round.timingId !== undefined && (
        <Tick
          label={whenWords.choice.nothingAfterLast}
          checked={round.onlyInWindow === true}
          onChange={(isOn) => setOnlyInWindow(round, isOn)}
        />
      )}
      <Button onPress={onNew}>
        <Plus size={14} aria-hidden="true" /> {whenWords.choice.newTiming}
      </Button>
    </div>
  );
}

const KINDS = [
  { value: 'degree-days', words: whenWords.choice.degreeDays },
  { value: 'soil-temperature', words: whenWords.choice.soilTemperature },
  { value: 'calendar', words: whenWords.choice.theCalendar },
] as const;
const OWN = '';

/** Makes a timing: from figures of one's own, or from published ones, which are shown with their source and can be changed. */
export function NewTiming({ book, round, onDone }: ChoiceProps & { readonly onDone: () => void }) {
  const [published, setPublished] = useState(OWN);
  const [draft, setDraft] = useState<TimingDraft>(() => emptyDraft('degree-days'));
  const missing = missingOf(draft);
  const pick = (id: string) => {
    const found = PUBLISHED_TIMINGS.find((each) => each.id === id);
    setPublished(found?.id ?? OWN);
    setDraft(found === undefined ? emptyDraft(draft.kind) : draftOf(found));
  };
  const add = () => {
    const made = completed(draft, freshId(book.timings, 'timing'));
    const done = made.ok ? putRecord('timings', made.value) : made;
    if (!done.ok) showError(done.error);
    else if (made.ok && setTiming(round, made.value.id)) onDone();
  };
  return (
    <Section title={whenWords.choice.aNewTiming}>
      <p className="quiet small">{whenWords.choice.about}</p>
      <div className="when-form">
        <div className="when-form-wide">
          <Field label={whenWords.choice.beginWith}>
            <Choice
              label={whenWords.choice.beginWith}
              value={published}
              options={[
                { value: OWN, words: whenWords.choice.ownFigures },
                ...PUBLISHED_TIMINGS.map(({ id, title }) => ({ value: id, words: title })),
              ]}
              onChoose={pick}
            />
          </Field>
        </div>
        {published === OWN && (
          <Field label={whenWords.choice.by}>
            <Choice
              label={whenWords.choice.by}
              value={draft.kind}
              options={KINDS}
              onChoose={(kind) => setDraft({ ...emptyDraft(kind), name: draft.name, source: draft.source })}
            />
          </Field>
        )}
      </div>
      {draft.source !== '' && <p className="small when-source">{draft.source}</p>}
      <TimingForm
        key={`${published} ${draft.kind}`}
        draft={draft}
        stations={stationNames(book)}
        onChange={(changes) => {
          setDraft((before) => ({ ...before, ...changes }));
          return ok(null);
        }}
      />
      <div className="when-buttons">
        <Button
          look="main"
          whyNot={missing.length === 0 ? null : whenWords.choice.missing(missing.join(', '))}
          onPress={add}
        >
          {whenWords.choice.addThisTiming}
        </Button>
        <Button onPress={onDone}>{commonWords.cancel}</Button>
        {missing.length > 0 && <span className="quiet small">{whenWords.choice.missing(missing.join(', '))}</span>}
      </div>
    </Section>
  );
}

/** The figures of the chosen timing, each of which can be changed. */
export function TimingFigures({ book, round }: ChoiceProps) {
  const timing = book.timings.find((each) => each.id === round.timingId);
  if (timing === undefined) return null;
  const others = book.rounds.filter((each) => each.id !== round.id && each.timingId === timing.id).length;
  return (
    <Section
      title={whenWords.choice.figures}
      aside={
        <Button
          look="quiet"
          label={whenWords.choice.removeOf(timing.name)}
          tip={whenWords.choice.removeThis}
          onPress={() => {
            const done = edit(withoutTiming(book, timing));
            if (done.ok) showNews(whenWords.choice.removed(timing.name), true);
            else showError(done.error);
          }}
        >
          <Trash2 size={15} aria-hidden="true" />
        </Button>
      }
    >
      {others > 0 && <p className="caution small">{whenWords.choice.sharedNote}</p>}
      <TimingForm
        key={timing.id}
        draft={timing}
        stations={stationNames(book)}
        onChange={(changes) => {
          const made = completed({ ...timing, ...changes }, timing.id);
          return made.ok ? putRecord('timings', made.value, whenWords.choice.change) : made;
        }}
      />
    </Section>
  );
}
