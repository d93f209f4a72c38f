import { useState } from 'react';
import { ok } from '../../../../core/base/index.ts';
import { type Calibrated, keepCalibration, overdueUses, type Sheet } from '../../../../core/calibrate/index.ts';
import { todayHere } from '../../../format/index.ts';
import { freshId } from '../../../stores/index.ts';
import { benchWords } from '../../../texts/shed/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput } from '../../../ui/index.ts';
import { BenchAnswerView } from './bench-answer.tsx';
import { BenchFormFields } from './bench-form.tsx';
import { BenchHistory } from './bench-history.tsx';
import { type BenchForm, EMPTY_FORM, recordOf, sheetsFor, type Worked, work } from './bench-state.ts';

type BenchProps<Owner extends Calibrated> = {
  readonly owner: Owner;
  readonly onKeep: (owner: Owner, label: string) => void;
};

/** The calibration bench of one head or hand method: work a sheet out, keep it, see those before. */
export function CalibrationBench<Owner extends Calibrated>({ owner, onKeep }: BenchProps<Owner>) {
  const sheets = sheetsFor(owner);
  const [kind, setKind] = useState(sheets[0]?.kind ?? '');
  const [form, setForm] = useState<BenchForm>(EMPTY_FORM);
  const sheet = sheets.find((each) => each.kind === kind) ?? sheets[0];
  if (sheet === undefined) return null;
  const worked = work(sheet, form);
  return (
    <div className="bench">
      <Choice
        label={benchWords.bench.calculationFor(owner.name)}
        value={sheet.kind}
        options={sheets.map((each) => ({ value: each.kind, words: each.kind }))}
        onChoose={(chosen) => {
          setKind(chosen);
          setForm(EMPTY_FORM);
        }}
      />
      <p className="quiet small">{benchWords.bench.fillIn(sheet.words.replaceAll('--', ''))}</p>
      <BenchFormFields sheet={sheet} form={form} worked={worked} onChange={setForm} />
      {worked?.ok === false && (
        <p className="fault" role="alert">
          {worked.error.detail} {worked.error.hint}
        </p>
      )}
      {worked?.ok === true && <BenchAnswerView sheet={sheet} worked={worked.value} />}
      <KeepFields
        key={sheet.kind}
        owner={owner}
        sheet={sheet}
        form={form}
        worked={worked?.ok === true && worked.value.answers.length > 0 ? worked.value : null}
        onKeep={(next) => {
          onKeep(next, benchWords.bench.keepCalibration);
          setForm(EMPTY_FORM);
        }}
      />
      <UseFields owner={owner} onChange={onKeep} />
      <BenchHistory calibrations={owner.calibrations ?? []} />
    </div>
  );
}

type KeepProps<Owner extends Calibrated> = {
  readonly owner: Owner;
  readonly sheet: Sheet;
  readonly form: BenchForm;
  readonly worked: Worked | null;
  readonly onKeep: (owner: Owner) => void;
};

function KeepFields<Owner extends Calibrated>({ owner, sheet, form, worked, onKeep }: KeepProps<Owner>) {
  const [on, setOn] = useState(() => todayHere());
  const [by, setBy] = useState('');
  const [setting, setSetting] = useState('');
  const keep = () => {
    if (worked === null) return;
    const id = freshId(owner.calibrations ?? [], 'calibration');
    onKeep(keepCalibration(owner, recordOf(sheet, form, worked, { id, on, by, setting }), worked.figures));
  };
  return (
    <fieldset className="bench-keep">
      <legend>{benchWords.bench.keepIt}</legend>
      <Field label={benchWords.bench.madeOn}>
        <input
          type="date"
          className="input"
          aria-label={benchWords.bench.madeOn}
          value={on}
          onChange={(event) => event.target.value !== '' && setOn(event.target.value)}
        />
      </Field>
      <Field label={benchWords.bench.by}>
        <DraftInput label={benchWords.bench.madeBy} text={by} onCommit={(text) => ok(setBy(text))} />
      </Field>
      <Field label={benchWords.bench.setting}>
        <DraftInput
          label={benchWords.bench.settingLabel}
          placeholder={benchWords.bench.settingPlaceholder}
          text={setting}
          onCommit={(text) => ok(setSetting(text))}
        />
      </Field>
      <Button
        label={benchWords.bench.keepWith(owner.name)}
        whyNot={worked === null ? benchWords.bench.fillInFirst : null}
        onPress={keep}
      >
        {benchWords.bench.keepWith(owner.name)}
      </Button>
    </fieldset>
  );
}

function UseFields<Owner extends Calibrated>({
  owner,
  onChange,
}: {
  readonly owner: Owner;
  readonly onChange: (owner: Owner, label: string) => void;
}) {
  const overdue = overdueUses(owner);
  return (
    <div className="bench-uses">
      <Field
        label={benchWords.bench.dueAfterUses}
        {...(overdue !== null && overdue >= 0 ? { note: benchWords.bench.due } : {})}
      >
        <QuantityInput
          kind="whole"
          label={benchWords.bench.dueAfterUsesOf(owner.name)}
          value={owner.dueAfterUses ?? null}
          optional
          positive
          onCommit={(dueAfterUses) => {
            const { dueAfterUses: _, ...others } = owner;
            const next = dueAfterUses === null ? others : { ...others, dueAfterUses };
            return ok(onChange(next as Owner, benchWords.bench.changeDue));
          }}
        />
      </Field>
      <Field label={benchWords.bench.daysUsed}>
        <QuantityInput
          kind="whole"
          label={benchWords.bench.daysUsedOf(owner.name)}
          value={owner.usesSince ?? 0}
          onCommit={(usesSince) =>
            ok(onChange({ ...owner, usesSince: usesSince ?? 0 }, benchWords.bench.changeDaysUsed))
          }
        />
      </Field>
    </div>
  );
}
