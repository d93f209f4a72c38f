import { useState } from 'react';
import { PLAN_WRITERS, type PlanFileWriter, WRITERS } from '../../../core/formats/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { NotYet } from '../../next/index.ts';
import { exportGround, exportPlan, useBook, useCurrentPlan, useFormat } from '../../stores/index.ts';
import { paperWords } from '../../texts/index.ts';
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
        <h2>{paperWords.exchange.title}</h2>
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
    { value: ALL, words: paperWords.exchange.allDays },
    ...days.map((each) => ({ value: keyOf(each), words: `${words.date(each.date)}, ${each.rigName}` })),
  ];
  if (known === null)
    return (
      <Section title={paperWords.exchange.daysPlan}>
        <NotYet title={paperWords.exchange.noDayYet} needs="plan">
          {paperWords.exchange.noDayAdvice}
        </NotYet>
      </Section>
    );
  const whyNot = (writer: PlanFileWriter): string | null => {
    return days.length === 0 && !writer.isWhole ? paperWords.exchange.needsDay : null;
  };
  const save = (writer: PlanFileWriter) => () => {
    const some = day === undefined || writer.isWhole ? days : [day];
    exportPlan(writer, known.plan, some).catch(() => undefined);
  };
  return (
    <Section title={paperWords.exchange.daysOf(known.plan.roundName)}>
      <Choice
        label={paperWords.exchange.daysLabel}
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
  if (count === 0)
    return (
      <Section title={paperWords.exchange.lawnsTitle}>
        <NotYet title={paperWords.exchange.noLawnsYet} needs="lawns">
          {paperWords.exchange.noLawnsAdvice}
        </NotYet>
      </Section>
    );
  return (
    <Section title={paperWords.exchange.lawnsTitle}>
      <ul className="exchange-list">
        {WRITERS.map((writer) => (
          <FileRow
            key={writer.id}
            {...writer}
            whyNot={null}
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
      <Button label={paperWords.exchange.saveFile(title)} whyNot={whyNot} onPress={onSave}>
        {paperWords.exchange.save}
      </Button>
    </li>
  );
}

/** What whoever hands a file on should know. */
export function ExchangeFacts() {
  return (
    <div className="inspector">
      <Section title={paperWords.exchange.mind}>
        <p className="small">{paperWords.exchange.privacy}</p>
        <p className="small">{paperWords.exchange.timeZones}</p>
        <p className="small">{paperWords.exchange.unitsNote}</p>
      </Section>
    </div>
  );
}
