import { useState } from 'react';
import { PLAN_WRITERS, type PlanFileWriter, WRITERS } from '../../../core/formats/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { exportGround, exportPlan, useBook, useCurrentPlan, useFormat } from '../../stores/index.ts';
import { Button, Choice, Section } from '../../ui/index.ts';

/** Stands for every day of the plan. */
const ALL = '';
const NO_DAYS: readonly PlanDay[] = [];

const keyOf = ({ date, rigId }: PlanDay): string => JSON.stringify([date, rigId]);

/** Files for other programs: days of the plan, and the lawns of the book. */
export function ExchangePage() {
  return (
    <div className="paper-room">
      <div className="paper-tools">
        <h2>Files for other programs</h2>
      </div>
      <div className="exchange-page">
        <PlanFiles />
        <LawnFiles />
      </div>
    </div>
  );
}

function PlanFiles() {
  const known = useCurrentPlan();
  const words = useFormat();
  const [chosen, setChosen] = useState(ALL);
  const days = known?.plan.days ?? NO_DAYS;
  const day = days.find((each) => keyOf(each) === chosen);
  const options = [
    { value: ALL, words: 'all days of the plan' },
    ...days.map((each) => ({ value: keyOf(each), words: `${words.date(each.date)}, ${each.rigName}` })),
  ];
  const whyNot = (writer: PlanFileWriter): string | null => {
    if (known === null) return 'Plan a round first';
    return days.length === 0 && !writer.isWhole ? 'The plan has no day: nothing could be placed' : null;
  };
  const save = (writer: PlanFileWriter) => () => {
    if (known === null) return;
    const some = day === undefined || writer.isWhole ? days : [day];
    exportPlan(writer, known.plan, some).catch(() => undefined);
  };
  return (
    <Section title={known === null ? 'Days of a plan' : `Days of ${known.plan.roundName}`}>
      <Choice
        label="Days in the file"
        value={day === undefined ? ALL : chosen}
        options={options}
        onChoose={setChosen}
      />
      <ul className="exchange-list">
        {PLAN_WRITERS.map((writer) => (
          <FileRow key={writer.id} {...writer} whyNot={whyNot(writer)} onSave={save(writer)} />
        ))}
      </ul>
    </Section>
  );
}

function LawnFiles() {
  const count = useBook((state) => state.open?.book.properties.length ?? 0);
  return (
    <Section title="Lawns of the book">
      <ul className="exchange-list">
        {WRITERS.map((writer) => (
          <FileRow
            key={writer.id}
            {...writer}
            whyNot={count === 0 ? 'The book has no lawns yet' : null}
            onSave={() => exportGround(writer).catch(() => undefined)}
          />
        ))}
      </ul>
    </Section>
  );
}

type RowProps = {
  readonly title: string;
  readonly leavesOut: string;
  readonly whyNot: string | null;
  readonly onSave: () => void;
};

function FileRow({ title, leavesOut, whyNot, onSave }: RowProps) {
  return (
    <li className="exchange-row">
      <div>
        <span className="row-title">{title}</span>
        <span className="row-note">{leavesOut}</span>
      </div>
      <Button label={`Save ${title}`} whyNot={whyNot} onPress={onSave}>
        Save…
      </Button>
    </li>
  );
}

/** What whoever hands a file on should know. */
export function ExchangeFacts() {
  return (
    <div className="inspector">
      <Section title="Mind">
        <p className="small">
          These files hold names, addresses and notes of customers: give them only to whom they concern. They are
          copies: what is changed in one changes nothing here.
        </p>
        <p className="small">
          Books know no time zones. Calendars show the times as the clock on the wall; receivers get them as texts.
          Routes go straight from place to place.
        </p>
        <p className="small">Tables and fields are in US units, whatever the screen shows.</p>
      </Section>
    </div>
  );
}
