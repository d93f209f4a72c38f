import { Trash2 } from 'lucide-react';
import { ok, type Result } from '../../../core/base/index.ts';
import { METRES_PER_FOOT } from '../../../core/units/index.ts';
import { useFormat } from '../../stores/index.ts';
import { fieldWorkWords } from '../../texts/ground/index.ts';
import { Button, Choice, DraftInput, Field, QuantityInput } from '../../ui/index.ts';
import {
  type AreaDraft,
  blankShape,
  readLengths,
  SHAPE_FIGURES,
  type ShapeDraft,
  type ShapeKind,
} from './field-work-draft.ts';

type DraftOf<Kind extends AreaDraft['kind']> = Extract<AreaDraft, { readonly kind: Kind }>;
type FormProps<Kind extends AreaDraft['kind']> = {
  readonly draft: DraftOf<Kind>;
  /** Takes the draft with a change in it; what is refused stays in its field. */
  readonly onChange: (draft: AreaDraft) => Result<unknown>;
};

const SHAPE_OPTIONS: readonly { readonly value: ShapeKind; readonly words: string }[] = [
  { value: 'rectangle', words: fieldWorkWords.forms.rectangle },
  { value: 'triangle', words: fieldWorkWords.forms.triangle },
  { value: 'circle', words: fieldWorkWords.forms.circle },
  { value: 'trapezoid', words: fieldWorkWords.forms.trapezoid },
  { value: 'ellipse', words: fieldWorkWords.forms.oval },
];
const TAKE_OPTIONS = [
  { value: 'add', words: fieldWorkWords.forms.add },
  { value: 'subtract', words: fieldWorkWords.forms.takeOff },
] as const;

/** Plain shapes that are added up, and others taken off. */
export function ShapesForm({ draft, onChange }: FormProps<'shapes'>) {
  const put = (shapes: readonly ShapeDraft[]) => onChange({ kind: 'shapes', shapes });
  return (
    <>
      <ol className="shape-list">
        {draft.shapes.map((shape, index) => (
          <ShapeRow
            key={`${shape.kind} ${String(index)}`}
            shape={shape}
            number={index + 1}
            onChange={(next) => put(draft.shapes.with(index, next))}
            onRemove={draft.shapes.length < 2 ? null : () => put(draft.shapes.toSpliced(index, 1))}
          />
        ))}
      </ol>
      <Button onPress={() => put([...draft.shapes, blankShape('rectangle')])}>{fieldWorkWords.forms.addAShape}</Button>
    </>
  );
}

type ShapeRowProps = {
  readonly shape: ShapeDraft;
  readonly number: number;
  readonly onChange: (shape: ShapeDraft) => Result<unknown>;
  readonly onRemove: (() => void) | null;
};

function ShapeRow({ shape, number, onChange, onRemove }: ShapeRowProps) {
  return (
    <li>
      <div className="shape-head">
        <Choice
          label={fieldWorkWords.forms.sign(number)}
          value={shape.take}
          options={TAKE_OPTIONS}
          onChoose={(take) => onChange({ ...shape, take })}
        />
        <Choice
          label={fieldWorkWords.forms.kindOf(number)}
          value={shape.kind}
          options={SHAPE_OPTIONS}
          onChoose={(kind) => onChange({ ...blankShape(kind), take: shape.take, note: shape.note })}
        />
        {onRemove !== null && (
          <Button
            look="quiet"
            label={fieldWorkWords.forms.removeShape(number)}
            tip={fieldWorkWords.forms.removeThis}
            onPress={onRemove}
          >
            <Trash2 size={14} aria-hidden="true" />
          </Button>
        )}
      </div>
      <div className="shape-figures">
        {SHAPE_FIGURES[shape.kind].map((word, index) => (
          <span key={word} className="shape-figure">
            <span aria-hidden="true">{word}</span>
            <QuantityInput
              kind="length"
              label={fieldWorkWords.forms.figureOf(number, word)}
              value={shape.figuresFt[index] ?? null}
              positive
              onCommit={(value) => onChange({ ...shape, figuresFt: shape.figuresFt.with(index, value) })}
            />
          </span>
        ))}
      </div>
    </li>
  );
}

const RULE_OPTIONS = [
  { value: 'simpson', words: fieldWorkWords.forms.simpson },
  { value: 'trapezoid', words: fieldWorkWords.forms.trapezoidRule },
] as const;

/** Widths measured across at equal distances along a base line. */
export function OffsetsForm({ draft, onChange }: FormProps<'offsets'>) {
  return (
    <>
      <Field label={fieldWorkWords.forms.spacing}>
        <QuantityInput
          kind="length"
          label={fieldWorkWords.forms.spacingLabel}
          value={draft.intervalFt}
          positive
          onCommit={(intervalFt) => onChange({ ...draft, intervalFt })}
        />
      </Field>
      <Field label={fieldWorkWords.forms.offsets} note={fieldWorkWords.forms.offsetsNote}>
        <LengthsInput
          label={fieldWorkWords.forms.offsets}
          figuresFt={draft.offsetsFt}
          leastFt={0}
          onCommit={(offsetsFt) => onChange({ ...draft, offsetsFt })}
        />
      </Field>
      <Field label={fieldWorkWords.forms.rule}>
        <Choice
          label={fieldWorkWords.forms.ruleLabel}
          value={draft.rule}
          options={RULE_OPTIONS}
          onChoose={(rule) => onChange({ ...draft, rule })}
        />
      </Field>
    </>
  );
}

/** Radii of a round green, measured from its middle at equal angles. */
export function RadiiForm({ draft, onChange }: FormProps<'mean-radius'>) {
  return (
    <Field label={fieldWorkWords.forms.radii} note={fieldWorkWords.forms.radiiNote}>
      <LengthsInput
        label={fieldWorkWords.forms.radii}
        figuresFt={draft.radiiFt}
        leastFt={0.01}
        onCommit={(radiiFt) => onChange({ ...draft, radiiFt })}
      />
    </Field>
  );
}

type LengthsProps = {
  readonly label: string;
  readonly figuresFt: readonly number[];
  readonly leastFt: number;
  readonly onCommit: (figuresFt: readonly number[]) => Result<unknown>;
};

/** Several lengths in one field, "0, 12.5, 19". */
function LengthsInput({ label, figuresFt, leastFt, onCommit }: LengthsProps) {
  const { system } = useFormat();
  const shown = figuresFt.map((each) => plainLength(each, system)).join(', ');
  return (
    <DraftInput
      label={label}
      text={shown}
      placeholder={system === 'us' ? fieldWorkWords.forms.placeholderFt : fieldWorkWords.forms.placeholderM}
      onCommit={(text) => {
        const read = readLengths(text, label, system, leastFt);
        if (!read.ok) return read;
        return read.value.length === 0 && figuresFt.length === 0 ? ok(null) : onCommit(read.value);
      }}
    />
  );
}

function plainLength(lengthFt: number, system: 'us' | 'metric'): string {
  return String(Math.round((system === 'us' ? lengthFt : lengthFt * METRES_PER_FOOT) * 1000) / 1000);
}
