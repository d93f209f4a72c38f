import type { Book, Firm } from '../../../core/book/index.ts';
import { edit } from '../../stores/index.ts';
import { paperWords } from '../../texts/index.ts';
import { Choice, type ChoiceOption, DraftInput, Field, Section } from '../../ui/index.ts';

const FIELDS: readonly (readonly [name: keyof Firm, label: string])[] = [
  ['name', paperWords.firm.name],
  ['address', paperWords.firm.address],
  ['phone', paperWords.firm.phone],
  ['licence', paperWords.firm.licence],
  ['siteUse', paperWords.firm.whatIsTreated],
];

/** Records are compared with later ones for years, so that their units are the book's and not those of the reader. */
const UNITS: readonly ChoiceOption<Book['units']>[] = [
  { value: 'us', words: paperWords.firm.us },
  { value: 'metric', words: paperWords.firm.metric },
];

const EMPTY: Firm = { name: '', address: '', phone: '', licence: '', siteUse: '' };

/** The firm as records and notices name it. */
export function FirmFields({ book }: { readonly book: Book }) {
  const firm = book.firm ?? EMPTY;
  return (
    <Section title={paperWords.firm.title}>
      <details className="left-out">
        <summary>{firm.name.trim() === '' ? paperWords.firm.summary : firm.name}</summary>
        {FIELDS.map(([name, label]) => (
          <Field key={name} label={label}>
            <DraftInput
              label={label}
              text={firm[name]}
              onCommit={(text) =>
                edit({ kind: 'set', changes: { firm: { ...firm, [name]: text } }, label: paperWords.firm.change })
              }
            />
          </Field>
        ))}
        <Field label={paperWords.firm.recordUnits}>
          <Choice
            label={paperWords.firm.recordUnits}
            value={book.units}
            options={UNITS}
            onChoose={(units) => {
              edit({ kind: 'set', changes: { units }, label: paperWords.firm.changeRecordUnits });
            }}
          />
        </Field>
      </details>
    </Section>
  );
}
