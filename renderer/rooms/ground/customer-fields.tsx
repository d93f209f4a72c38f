import type { Property } from '../../../core/book/index.ts';
import { changeProperty } from '../../stores/index.ts';
import { DraftInput, Field, Section } from '../../ui/index.ts';
import { withOptional } from './zone-edits.ts';

type Customer = NonNullable<Property['customer']>;

/** For whom the lawn is treated, and what it is: records and notices name both. */
export function CustomerFields({ property }: { readonly property: Property }) {
  const { customer, siteUse } = property;
  const name = customer?.name.trim() ?? '';
  return (
    <Section title="Customer">
      <details className="left-out">
        <summary>{name === '' ? 'Name, address, phone: for records and notices' : name}</summary>
        <CustomerField property={property} name="name" label="Customer's name" />
        <CustomerField property={property} name="address" label="Customer's address" note="empty: that of the lawn" />
        <CustomerField property={property} name="phone" label="Customer's phone" />
        <Field label="What is treated" note="empty: as the firm says">
          <DraftInput
            label="What is treated"
            text={siteUse ?? ''}
            placeholder="residential lawn"
            onCommit={(text) =>
              changeProperty(
                withOptional<Property, 'siteUse'>(property, 'siteUse', text === '' ? null : text),
                {},
                'Change what is treated',
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
    return changeProperty(changed, {}, 'Change customer');
  };
  return (
    <Field label={label} {...(note === undefined ? {} : { note })}>
      <DraftInput label={label} text={customer[name] ?? ''} onCommit={commit} />
    </Field>
  );
}
