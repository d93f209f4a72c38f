import { useId } from 'react';
import type { Result } from '../../../../core/base/index.ts';
import { type Blank, type Sheet, TIP_SIZES, typedBlanks } from '../../../../core/calibrate/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { benchWords } from '../../../texts/shed/index.ts';
import { Choice } from '../../../ui/index.ts';
import type { BenchForm, Worked } from './bench-state.ts';

type FormProps = {
  readonly sheet: Sheet;
  readonly form: BenchForm;
  readonly worked: Result<Worked> | null;
  readonly onChange: (form: BenchForm) => void;
};

const TAKES_PRODUCT: ReadonlySet<string> = new Set(['mix', 'catch']);
const PRODUCT_UNITS = [
  { value: 'fl-oz', words: benchWords.form.flOz },
  { value: 'oz', words: benchWords.form.ozByWeight },
  { value: 'lb', words: commonWords.lb },
] as const;

/** The blanks of a sheet. What follows from those that are filled in stands in the others. */
export function BenchFormFields({ sheet, form, worked, onChange }: FormProps) {
  const { typed, choices } = form;
  const found = worked?.ok === true ? worked.value.answers : [];
  const fault = worked?.ok === false ? worked.error.where : null;
  return (
    <div className="bench-fields">
      {sheet.kind === 'tip' && (
        <div className="bench-field">
          <span aria-hidden="true">{benchWords.form.tipSize}</span>
          <Choice
            label={benchWords.form.tipSize}
            value={choices.tipSize ?? ''}
            options={[
              { value: '', words: benchWords.form.notSaid },
              ...TIP_SIZES.map(({ size, colour }) => ({ value: size, words: `${size}, ${colour}` })),
            ]}
            onChoose={(size) => {
              const { tipSize: _, ...others } = choices;
              onChange({ typed, choices: size === '' ? others : { ...others, tipSize: size } });
            }}
          />
        </div>
      )}
      {TAKES_PRODUCT.has(sheet.kind) && (
        <div className="bench-field">
          <span aria-hidden="true">{benchWords.form.unitProduct}</span>
          <Choice
            label={benchWords.form.unitProduct}
            value={choices.productUnit ?? 'fl-oz'}
            options={PRODUCT_UNITS}
            onChoose={(productUnit) => onChange({ typed, choices: { ...choices, productUnit } })}
          />
        </div>
      )}
      {typedBlanks(sheet).map((blank) => (
        <BlankField
          key={blank.name}
          blank={blank}
          text={typed[blank.name] ?? ''}
          found={found.find((each) => each.name === blank.name)?.value ?? null}
          isFaulty={fault === blank.name}
          onType={(text) => onChange({ typed: { ...typed, [blank.name]: text }, choices })}
        />
      ))}
    </div>
  );
}

type BlankProps = {
  readonly blank: Blank;
  readonly text: string;
  readonly found: number | null;
  readonly isFaulty: boolean;
  readonly onType: (text: string) => void;
};

function BlankField({ blank, text, found, isFaulty, onType }: BlankProps) {
  const id = useId();
  return (
    <div className="bench-field">
      <label htmlFor={id}>{labelOf(blank)}</label>
      <input
        id={id}
        className="input input-right"
        autoComplete="off"
        spellCheck={false}
        aria-invalid={isFaulty ? true : undefined}
        placeholder={found === null ? '' : shownFigure(found)}
        value={text}
        onChange={(event) => onType(event.target.value)}
      />
    </div>
  );
}

/** What a blank asks for, without the remarks of the command line. */
export const labelOf = ({ words }: Pick<Blank, 'words'>): string => words.split(/[:;]/)[0] ?? words;

/** Four digits that count. */
export const shownFigure = (value: number): string => String(Number(value.toPrecision(4)));
