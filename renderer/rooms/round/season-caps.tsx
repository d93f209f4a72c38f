import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import { ok } from '../../../core/base/index.ts';
import type { Book, Cap } from '../../../core/book/index.ts';
import { RATE_GROUND } from '../../../core/demand/index.ts';
import { activeNames } from '../../../core/round/ledger/index.ts';
import { KILOGRAMS_PER_POUND, SQUARE_METRES_PER_SQUARE_FOOT } from '../../../core/units/index.ts';
import { freshId, putRecord, removeRecord, showError, useFormat } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { seasonWords } from '../../texts/round/index.ts';
import { Button, Choice, DraftInput, QuantityInput, Section } from '../../ui/index.ts';

const KINDS = [
  { value: 'nitrogen', words: commonWords.nitrogen },
  { value: 'phosphate', words: commonWords.phosphate },
  { value: 'potash', words: commonWords.potash },
  { value: 'active', words: commonWords.activeIngredient },
] as const;

/** Pounds on 1,000 ft2 as grams on 100 m2. */
const GRAMS_PER_POUND_RATE = (KILOGRAMS_PER_POUND * 1000) / (10 * SQUARE_METRES_PER_SQUARE_FOOT);
const CAP_UNITS = {
  us: { unit: commonWords.lb, ground: RATE_GROUND.us, factor: 1 },
  metric: { unit: seasonWords.caps.g, ground: RATE_GROUND.metric, factor: GRAMS_PER_POUND_RATE },
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
    <Section title={seasonWords.caps.title(per.ground)}>
      <p className="quiet small">{seasonWords.caps.about}</p>
      <table className="table table-edit season-caps">
        <thead>
          <tr>
            <th scope="col">{seasonWords.caps.ofWhat}</th>
            <th scope="col">{seasonWords.caps.ingredient}</th>
            <th scope="col" className="number">
              {seasonWords.caps.most(per.unit)}
            </th>
            <th scope="col">{seasonWords.caps.setBy}</th>
            <th scope="col">
              <span className="only-spoken">{seasonWords.caps.do}</span>
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
          label={seasonWords.caps.kindOf(number)}
          value={cap.what}
          options={KINDS}
          onChoose={(what) => {
            const { active: _, ...rest } = cap;
            change(
              what === 'active' ? { ...rest, what, active: names[0] ?? '' } : { ...rest, what },
              seasonWords.caps.changeCap,
            );
          }}
        />
      </td>
      <td>
        <IngredientChoice
          label={seasonWords.caps.ingredientOf(number)}
          what={cap.what}
          active={cap.active ?? ''}
          names={names}
          onChoose={(active) => change({ ...cap, active }, seasonWords.caps.changeIngredient)}
        />
      </td>
      <td className="number">
        <QuantityInput
          kind="fine-number"
          label={seasonWords.caps.mostOf(said, per.unit, per.ground)}
          value={cap.mostLbPer1000SqFt * per.factor}
          positive
          onCommit={(value) =>
            change(
              { ...cap, mostLbPer1000SqFt: value === null ? cap.mostLbPer1000SqFt : value / per.factor },
              seasonWords.caps.changeOf(said),
            )
          }
        />
      </td>
      <td>
        <DraftInput
          label={seasonWords.caps.sourceOf(said)}
          text={cap.source}
          onCommit={(source) => change({ ...cap, source }, seasonWords.caps.changeSourceOf(said))}
        />
      </td>
      <td className="row-tools">
        <Button
          look="quiet"
          label={seasonWords.caps.removeOf(said)}
          tip={commonWords.remove}
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
  if (known.length === 0) return <span className="quiet small">{seasonWords.caps.noIngredientNamed}</span>;
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
      ? seasonWords.caps.typeMostFirst
      : what === 'active' && active === ''
        ? seasonWords.caps.whyNoIngredient
        : null;
  const add = () => {
    if (most === null) return;
    const id = freshId(book.caps, 'cap');
    const cap: Cap = { id, what, mostLbPer1000SqFt: most, source: '', ...(what === 'active' ? { active } : {}) };
    const done = putRecord('caps', cap, seasonWords.caps.addCap);
    if (done.ok) setMost(null);
    else showError(done.error);
  };
  return (
    <tr>
      <td>
        <Choice label={seasonWords.caps.kindOfNew} value={what} options={KINDS} onChoose={setWhat} />
      </td>
      <td>
        <IngredientChoice
          label={seasonWords.caps.ingredientOfNew}
          what={what}
          active={active}
          names={names}
          onChoose={setActive}
        />
      </td>
      <td className="number">
        <QuantityInput
          kind="fine-number"
          label={seasonWords.caps.mostOfNew(per.unit, per.ground)}
          value={most === null ? null : most * per.factor}
          optional
          positive
          onCommit={(value) => {
            setMost(value === null ? null : value / per.factor);
            return ok(null);
          }}
        />
      </td>
      <td className="quiet small">{seasonWords.caps.new}</td>
      <td className="row-tools">
        <Button
          look="quiet"
          label={seasonWords.caps.addNew}
          tip={seasonWords.caps.addNew}
          whyNot={whyNot}
          onPress={add}
        >
          <Plus size={15} aria-hidden="true" />
        </Button>
      </td>
    </tr>
  );
}
