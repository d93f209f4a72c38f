import type { Book, Firm } from '../../../core/book/index.ts';
import { edit } from '../../stores/index.ts';
import { DraftInput, Field, Section } from '../../ui/index.ts';

const FIELDS: readonly (readonly [name: keyof Firm, label: string])[] = [
  ['name', 'Firm'],
  ['address', "Firm's address"],
  ['phone', "Firm's phone"],
  ['licence', 'Business licence'],
  ['siteUse', 'What is treated'],
];

const EMPTY: Firm = { name: '', address: '', phone: '', licence: '', siteUse: '' };

/** The firm as records and notices name it. */
export function FirmFields({ book }: { readonly book: Book }) {
  const firm = book.firm ?? EMPTY;
  return (
    <Section title="Your firm">
      <details className="left-out">
        <summary>{firm.name.trim() === '' ? 'Name, address, phone, licence' : firm.name}</summary>
        {FIELDS.map(([name, label]) => (
          <Field key={name} label={label}>
            <DraftInput
              label={label}
              text={firm[name]}
              onCommit={(text) =>
                edit({ kind: 'set', changes: { firm: { ...firm, [name]: text } }, label: 'Change the firm' })
              }
            />
          </Field>
        ))}
      </details>
    </Section>
  );
}
