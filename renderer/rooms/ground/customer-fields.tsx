import type { Property } from '../../../core/book/index.ts';
import { changeProperty } from '../../stores/index.ts';
import { estimateWords } from '../../texts/ground/index.ts';
import { DraftInput, Field, Section } from '../../ui/index.ts';
import { withOptional } from './zone-edits.ts';

type Customer = NonNullable<Property['customer']>;

/** For whom the lawn is treated, and what it is: records and notices name both. */
export function CustomerFields({ property }: { readonly property: Property }) {
  const { customer, siteUse } = property;
  const name = customer?.name.trim() ?? '';
  return (
    <Section title={estimateWords.customerFields.customer}>
      <details className="left-out">
        <summary>{name === '' ? estimateWords.customerFields.summary : name}</summary>
        <CustomerField property={property} name="name" label={estimateWords.customerFields.customersName} />
        <CustomerField
          property={property}
          name="address"
          label={estimateWords.customerFields.customersAddress}
          note={estimateWords.customerFields.addressNote}
        />
        <CustomerField property={property} name="phone" label={estimateWords.customerFields.customersPhone} />
        <Field label={estimateWords.customerFields.whatIsTreated} note={estimateWords.customerFields.treatedNote}>
          <DraftInput
            label={estimateWords.customerFields.whatIsTreated}
            text={siteUse ?? ''}
            placeholder={estimateWords.customerFields.treatedPlaceholder}
            onCommit={(text) =>
              changeProperty(
                withOptional<Property, 'siteUse'>(property, 'siteUse', text === '' ? null : text),
                {},
                estimateWords.customerFields.changeTreated,
              )
            }
          />
        </Field>
      </details>
    </Section>
  );
}

type CustomerFieldProps = {
  readonly property: Property;
  readonly name: keyof Customer & string;
  readonly label: string;
  readonly note?: string;
};

/** One line of the customer; without name, address and phone there is none. */
function CustomerField({ property, name, label, note }: CustomerFieldProps) {
  const customer: Customer = property.customer ?? { name: '' };
  const commit = (text: string) => {
    const next =
      name === 'name' ? { ...customer, name: text } : withOptional(customer, name, text === '' ? null : text);
    const isEmpty = next.name === '' && next.address === undefined && next.phone === undefined;
    const changed = withOptional<Property, 'customer'>(property, 'customer', isEmpty ? null : next);
    return changeProperty(changed, {}, estimateWords.customerFields.changeCustomer);
  };
  return (
    <Field label={label} {...(note === undefined ? {} : { note })}>
      <DraftInput label={label} text={customer[name] ?? ''} onCommit={commit} />
    </Field>
  );
}
