import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import { ok } from '../../../core/base/index.ts';
import type { Book, Cap } from '../../../core/book/index.ts';
import { RATE_GROUND } from '../../../core/demand/index.ts';
import { activeNames } from '../../../core/round/ledger/index.ts';
import { KILOGRAMS_PER_POUND, SQUARE_METRES_PER_SQUARE_FOOT } from '../../../core/units/index.ts';
import { freshId, putRecord, removeRecord, showError, useFormat } from '../../stores/index.ts';
import { Button, Choice, DraftInput, QuantityInput, Section } from '../../ui/index.ts';

const KINDS = [
  { value: 'nitrogen', words: 'nitrogen' },
  { value: 'phosphate', words: 'phosphate' },
  { value: 'potash', words: 'potash' },
  { value: 'active', words: 'active ingredient' },
] as const;

/** Pounds on 1,000 ft2 as grams on 100 m2. */
const GRAMS_PER_POUND_RATE = (KILOGRAMS_PER_POUND * 1000) / (10 * SQUARE_METRES_PER_SQUARE_FOOT);
const CAP_UNITS = {
  us: { unit: 'lb', ground: RATE_GROUND.us, factor: 1 },
  metric: { unit: 'g', ground: RATE_GROUND.metric, factor: GRAMS_PER_POUND_RATE },
} as const;

/** How caps are typed and shown in the units that are read; books keep pounds on 1,000 ft2. */
function useCapUnit() {
  return CAP_UNITS[useFormat().system];
}

/** The most of nutrients and active ingredients in a year, whatever product they come from. All figures are the user's. */
export function CapsSection({ book }: { readonly book: Book }) {
  const names = activeNames(book);
  const per = useCapUnit();
  return (
    <Section title={`Caps of a calendar year, per ${per.ground}`}>
      <p className="quiet small">
        A rule of the state or the town, or a label that limits an ingredient over all products. Work that would pass
        one is refused with the arithmetic.
      </p>
      <table className="table table-edit season-caps">
        <thead>
          <tr>
            <th scope="col">of what</th>
            <th scope="col">ingredient</th>
            <th scope="col" className="number">
              most, {per.unit}
            </th>
            <th scope="col">set by</th>
            <th scope="col">
              <span className="only-spoken">do</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {book.caps.map((cap, index) => (
            <CapRow key={cap.id} cap={cap} number={index + 1} names={names} />
          ))}
          <NewCap book={book} names={names} />
        </tbody>
      </table>
    </Section>
  );
}

type RowProps = { readonly cap: Cap; readonly number: number; readonly names: readonly string[] };

function CapRow({ cap, number, names }: RowProps) {
  const per = useCapUnit();
  const change = (next: Cap, label: string) => {
    const done = putRecord('caps', next, label);
    if (!done.ok) showError(done.error);
    return done;
  };
  const said = cap.what === 'active' ? (cap.active ?? '') : cap.what;
  return (
    <tr>
      <td>
        <Choice
          label={`What cap ${number} is on`}
          value={cap.what}
          options={KINDS}
          onChoose={(what) => {
            const { active: _, ...rest } = cap;
            change(what === 'active' ? { ...rest, what, active: names[0] ?? '' } : { ...rest, what }, 'Change cap');
          }}
        />
      </td>
      <td>
        <IngredientChoice
          label={`Ingredient of cap ${number}`}
          what={cap.what}
          active={cap.active ?? ''}
          names={names}
          onChoose={(active) => change({ ...cap, active }, 'Change ingredient of cap')}
        />
      </td>
      <td className="number">
        <QuantityInput
          kind="fine-number"
          label={`Most of ${said}, ${per.unit} per ${per.ground} in a year`}
          value={cap.mostLbPer1000SqFt * per.factor}
          positive
          onCommit={(value) =>
            change(
              { ...cap, mostLbPer1000SqFt: value === null ? cap.mostLbPer1000SqFt : value / per.factor },
              `Change cap of ${said}`,
            )
          }
        />
      </td>
      <td>
        <DraftInput
          label={`Who sets the cap of ${said}`}
          text={cap.source}
          onCommit={(source) => change({ ...cap, source }, `Change source of the cap of ${said}`)}
        />
      </td>
      <td className="row-tools">
        <Button
          look="quiet"
          label={`Remove the cap of ${said}`}
          tip="Remove"
          onPress={() => removeRecord('caps', cap.id, said)}
        >
          <X size={14} aria-hidden="true" />
        </Button>
      </td>
    </tr>
  );
}

type IngredientProps = {
  readonly label: string;
  readonly what: Cap['what'];
  readonly active: string;
  readonly names: readonly string[];
  readonly onChoose: (active: string) => void;
};

function IngredientChoice({ label, what, active, names, onChoose }: IngredientProps) {
  if (what !== 'active') return <span className="quiet">–</span>;
  const known = names.includes(active) || active === '' ? names : [active, ...names];
  if (known.length === 0) return <span className="quiet small">no product names one yet</span>;
  return (
    <Choice
      label={label}
      value={active}
      options={known.map((name) => ({ value: name, words: name }))}
      onChoose={onChoose}
    />
  );
}

/** The row for one more: nothing is put in before its figure is typed. */
function NewCap({ book, names }: { readonly book: Book; readonly names: readonly string[] }) {
  const per = useCapUnit();
  const [what, setWhat] = useState<Cap['what']>('nitrogen');
  const [named, setActive] = useState('');
  const [most, setMost] = useState<number | null>(null);
  const active = named === '' ? (names[0] ?? '') : named;
  const whyNot =
    most === null
      ? 'Type the most first'
      : what === 'active' && active === ''
        ? 'No product names an active ingredient yet'
        : null;
  const add = () => {
    if (most === null) return;
    const id = freshId(book.caps, 'cap');
    const cap: Cap = { id, what, mostLbPer1000SqFt: most, source: '', ...(what === 'active' ? { active } : {}) };
    const done = putRecord('caps', cap, 'Add cap');
    if (done.ok) setMost(null);
    else showError(done.error);
  };
  return (
    <tr>
      <td>
        <Choice label="What a new cap is on" value={what} options={KINDS} onChoose={setWhat} />
      </td>
      <td>
        <IngredientChoice
          label="Ingredient of a new cap"
          what={what}
          active={active}
          names={names}
          onChoose={setActive}
        />
      </td>
      <td className="number">
        <QuantityInput
          kind="fine-number"
          label={`Most of a new cap, ${per.unit} per ${per.ground} in a year`}
          value={most === null ? null : most * per.factor}
          optional
          positive
          onCommit={(value) => {
            setMost(value === null ? null : value / per.factor);
            return ok(null);
          }}
        />
      </td>
      <td className="quiet small">new</td>
      <td className="row-tools">
        <Button look="quiet" label="Add this cap" tip="Add this cap" whyNot={whyNot} onPress={add}>
          <Plus size={15} aria-hidden="true" />
        </Button>
      </td>
    </tr>
  );
}
