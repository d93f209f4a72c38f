import { ok, type Result } from '../../../../core/base/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { Choice, DraftInput, Field, MonthDayInput, QuantityInput, type QuantityKind } from '../../../ui/index.ts';
import type { TimingDraft } from './timing-draft.ts';

type Changes = Partial<TimingDraft>;
type FormProps = {
  readonly draft: TimingDraft;
  readonly stations: readonly string[];
  /** Takes the changed members; a failure is shown under the field. */
  readonly onChange: (changes: Changes) => Result<unknown>;
};

/** Every member of a timing with its unit. */
export function TimingForm(props: FormProps) {
  const { draft, onChange } = props;
  return (
    <div className="when-form">
      <div className="when-form-wide">
        <Field label={commonWords.name}>
          <DraftInput label={whenWords.form.nameOf} text={draft.name} onCommit={(name) => onChange({ name })} />
        </Field>
      </div>
      {draft.kind === 'calendar' && <CalendarFields {...props} />}
      {draft.kind === 'soil-temperature' && <SoilFields {...props} />}
      {draft.kind === 'degree-days' && <CountFields {...props} />}
      {draft.kind !== 'calendar' && <WorkingFields {...props} />}
      <div className="when-form-wide">
        <Field label={whenWords.form.source}>
          <DraftInput
            label={whenWords.form.source}
            text={draft.source}
            placeholder={whenWords.form.sourcePlaceholder}
            onCommit={(source) => onChange({ source })}
          />
        </Field>
      </div>
    </div>
  );
}

function CalendarFields({ draft, onChange }: FormProps) {
  return (
    <>
      <Day label={whenWords.form.opensOn} member="opens" draft={draft} onChange={onChange} />
      <Day label={whenWords.form.bestOn} member="best" draft={draft} onChange={onChange} optional />
      <Day label={whenWords.form.lastUsefulDay} member="closes" draft={draft} onChange={onChange} />
    </>
  );
}

const COURSES = [
  { value: '', words: whenWords.form.choose },
  { value: 'rising', words: whenWords.form.rising },
  { value: 'falling', words: whenWords.form.falling },
] as const;

function SoilFields({ draft, onChange }: FormProps) {
  const falls = draft.course === 'falling';
  return (
    <>
      <Figure label={whenWords.form.depth} member="depthIn" kind="width" draft={draft} onChange={onChange} positive />
      <Field label={whenWords.form.theSoilIs}>
        <Choice
          label={whenWords.form.theSoilIs}
          value={draft.course ?? ''}
          options={COURSES}
          onChoose={(course) => course !== '' && onChange({ course })}
        />
      </Field>
      <Day label={whenWords.form.lookedForFrom} member="from" draft={draft} onChange={onChange} />
      <Figure
        label={whenWords.form.meanOfDays}
        member="meanOfDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        positive
        most={30}
      />
      <Figure
        label={whenWords.form.heldForDays}
        member="forDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        positive
        most={30}
      />
      <Figure
        label={falls ? whenWords.form.opensBelow : whenWords.form.opensAbove}
        member="opensAtF"
        kind="temperature"
        draft={draft}
        onChange={onChange}
        optional
        note={whenWords.form.opensNote}
      />
      <Figure
        label={whenWords.form.bestAt}
        member="bestAtF"
        kind="temperature"
        draft={draft}
        onChange={onChange}
        optional
      />
      <Figure
        label={falls ? whenWords.form.closesBelow : whenWords.form.closesAbove}
        member="closesAtF"
        kind="temperature"
        draft={draft}
        onChange={onChange}
      />
    </>
  );
}

function CountFields({ draft, onChange }: FormProps) {
  return (
    <>
      <Figure label={whenWords.form.base} member="baseF" kind="temperature" draft={draft} onChange={onChange} />
      <Day label={whenWords.form.countedFrom} member="from" draft={draft} onChange={onChange} />
      <Figure label={whenWords.form.opensAt} member="opensAt" kind="degree-days" draft={draft} onChange={onChange} />
      <Figure
        label={whenWords.form.bestAt}
        member="bestAt"
        kind="degree-days"
        draft={draft}
        onChange={onChange}
        optional
      />
      <Figure
        label={whenWords.form.closesAt}
        member="closesAt"
        kind="degree-days"
        draft={draft}
        onChange={onChange}
        positive
      />
    </>
  );
}

function WorkingFields({ draft, stations, onChange }: FormProps) {
  const [first] = stations;
  const known = draft.station === undefined || stations.includes(draft.station) ? [] : [draft.station];
  return (
    <>
      {first !== undefined && (
        <Field label={whenWords.form.temperaturesOf}>
          <Choice
            label={whenWords.form.temperaturesOf}
            value={draft.station ?? ''}
            options={[
              { value: '', words: stations.length === 1 ? first : whenWords.form.firstStation(first) },
              ...(stations.length === 1 ? [] : stations).map((value) => ({ value, words: value })),
              ...known.map((value) => ({ value, words: whenWords.form.goneStation(value) })),
            ]}
            onChoose={(station) => onChange({ station: station === '' ? undefined : station })}
          />
        </Field>
      )}
      <Figure
        label={whenWords.form.smoothed}
        member="smoothDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        most={30}
        note={whenWords.form.smoothedNote}
      />
      <Figure
        label={whenWords.form.bridged}
        member="gapDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        most={14}
        note={whenWords.form.bridgedNote}
      />
    </>
  );
}

type DayMember = 'opens' | 'best' | 'closes' | 'from';
type FigureMember = {
  [Member in keyof TimingDraft]-?: TimingDraft[Member] extends number | undefined ? Member : never;
}[keyof TimingDraft];
type PartProps = { readonly label: string; readonly draft: TimingDraft; readonly onChange: FormProps['onChange'] };

function Day({
  label,
  member,
  draft,
  onChange,
  optional = false,
}: PartProps & { readonly member: DayMember; readonly optional?: boolean }) {
  return (
    <Field label={label}>
      <MonthDayInput
        label={label}
        value={draft[member] ?? null}
        optional={optional}
        onCommit={(value) => onChange({ [member]: value ?? undefined })}
      />
    </Field>
  );
}

type FigureProps = PartProps & {
  readonly member: FigureMember;
  readonly kind: QuantityKind;
  readonly optional?: boolean;
  readonly positive?: boolean;
  readonly most?: number;
  readonly note?: string;
};

function Figure({ label, member, kind, draft, onChange, note, optional = false, positive = false, most }: FigureProps) {
  return (
    <Field label={label} {...(note === undefined ? {} : { note })}>
      <QuantityInput
        kind={kind}
        label={label}
        value={draft[member] ?? null}
        optional={optional}
        positive={positive}
        {...(most === undefined ? {} : { most })}
        onCommit={(value) => (value === null && !optional ? ok(null) : onChange({ [member]: value ?? undefined }))}
      />
    </Field>
  );
}
