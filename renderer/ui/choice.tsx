export type ChoiceOption<Value extends string> = { readonly value: Value; readonly words: string };

type ChoiceProps<Value extends string> = {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly ChoiceOption<Value>[];
  readonly onChoose: (value: Value) => void;
  readonly id?: string;
};

/** One of a few, by the browser's own list. */
export function Choice<Value extends string>({ label, value, options, onChoose, id }: ChoiceProps<Value>) {
  return (
    <select
      id={id}
      className="input select"
      aria-label={label}
      value={value}
      onChange={(event) => {
        const chosen = options.find((option) => option.value === event.target.value);
        if (chosen !== undefined) onChoose(chosen.value);
      }}
    >
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.words}
        </option>
      ))}
    </select>
  );
}

type TickProps = {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  /** True where the words stand beside the box; else they are only spoken. */
  readonly shown?: boolean;
};

/** Yes or no. */
export function Tick({ label, checked, onChange, shown = true }: TickProps) {
  return (
    <label className="tick">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span className={shown ? undefined : 'only-spoken'}>{label}</span>
    </label>
  );
}
