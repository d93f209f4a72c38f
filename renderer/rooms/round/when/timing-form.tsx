import { ok, type Result } from '../../../../core/base/index.ts';
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
        <Field label="Name">
          <DraftInput label="Name of the timing" text={draft.name} onCommit={(name) => onChange({ name })} />
        </Field>
      </div>
      {draft.kind === 'calendar' && <CalendarFields {...props} />}
      {draft.kind === 'soil-temperature' && <SoilFields {...props} />}
      {draft.kind === 'degree-days' && <CountFields {...props} />}
      {draft.kind !== 'calendar' && <WorkingFields {...props} />}
      <div className="when-form-wide">
        <Field label="Source of the figures">
          <DraftInput
            label="Source of the figures"
            text={draft.source}
            placeholder="who says so"
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
      <Day label="Opens on" member="opens" draft={draft} onChange={onChange} />
      <Day label="Best on" member="best" draft={draft} onChange={onChange} optional />
      <Day label="Last useful day" member="closes" draft={draft} onChange={onChange} />
    </>
  );
}

const COURSES = [
  { value: '', words: 'choose' },
  { value: 'rising', words: 'rising, as in spring' },
  { value: 'falling', words: 'falling, as in fall' },
] as const;

function SoilFields({ draft, onChange }: FormProps) {
  const falls = draft.course === 'falling';
  return (
    <>
      <Figure
        label="Depth of the thermometer"
        member="depthIn"
        kind="width"
        draft={draft}
        onChange={onChange}
        positive
      />
      <Field label="The soil is">
        <Choice
          label="The soil is"
          value={draft.course ?? ''}
          options={COURSES}
          onChoose={(course) => course !== '' && onChange({ course })}
        />
      </Field>
      <Day label="Looked for from" member="from" draft={draft} onChange={onChange} />
      <Figure
        label="Mean of so many days"
        member="meanOfDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        positive
        most={30}
      />
      <Figure
        label="Has to hold for days"
        member="forDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        positive
        most={30}
      />
      <Figure
        label={falls ? 'Opens at or below' : 'Opens at or above'}
        member="opensAtF"
        kind="temperature"
        draft={draft}
        onChange={onChange}
        optional
        note="not set: open from the first day"
      />
      <Figure label="Best at" member="bestAtF" kind="temperature" draft={draft} onChange={onChange} optional />
      <Figure
        label={falls ? 'Closes below' : 'Closes at or above'}
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
      <Figure label="Base" member="baseF" kind="temperature" draft={draft} onChange={onChange} />
      <Day label="Counted from" member="from" draft={draft} onChange={onChange} />
      <Figure label="Opens at" member="opensAt" kind="degree-days" draft={draft} onChange={onChange} />
      <Figure label="Best at" member="bestAt" kind="degree-days" draft={draft} onChange={onChange} optional />
      <Figure label="Closes at" member="closesAt" kind="degree-days" draft={draft} onChange={onChange} positive />
    </>
  );
}

function WorkingFields({ draft, stations, onChange }: FormProps) {
  const [first] = stations;
  const known = draft.station === undefined || stations.includes(draft.station) ? [] : [draft.station];
  return (
    <>
      {first !== undefined && (
        <Field label="Temperatures of">
          <Choice
            label="Temperatures of"
            value={draft.station ?? ''}
            options={[
              { value: '', words: stations.length === 1 ? first : `the first station, ${first}` },
              ...(stations.length === 1 ? [] : stations).map((value) => ({ value, words: value })),
              ...known.map((value) => ({ value, words: `${value} (not in the book)` })),
            ]}
            onChoose={(station) => onChange({ station: station === '' ? undefined : station })}
          />
        </Field>
      )}
      <Figure
        label="Normal curve smoothed"
        member="smoothDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        most={30}
        note="so many days on each side"
      />
      <Figure
        label="Bridges gaps"
        member="gapDays"
        kind="whole"
        draft={draft}
        onChange={onChange}
        most={14}
        note="of so many days at most"
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
