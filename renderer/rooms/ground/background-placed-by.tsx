import { MapPin } from 'lucide-react';
import type { Property } from '../../../core/book/index.ts';
import { changeProperty, openPlaces } from '../../stores/index.ts';
import { Button, DraftInput } from '../../ui/index.ts';

const WORDS: Readonly<Record<NonNullable<Property['placedBy']>, string>> = {
  hand: 'place set by hand',
  file: 'place from a file',
  'address-range': 'placed by address range, often 100 ft off; move its parking point on the map to set it',
};

/** The address of a lawn, and how its place came to be known. */
export function PlacedBy({ property }: { readonly property: Property }) {
  const { placedBy } = property;
  return (
    <div className="placed-by">
      <DraftInput
        label="Address"
        text={property.address}
        placeholder="address"
        onCommit={(address) => changeProperty(property, { address: address.slice(0, 4000) }, 'Change address')}
      />
      <Button
        look="quiet"
        label="Find places by address"
        tip="Find places by address"
        onPress={() => openPlaces().catch(() => undefined)}
      >
        <MapPin size={15} aria-hidden="true" />
      </Button>
      {placedBy !== undefined && (
        <p className={`small ${placedBy === 'address-range' ? 'caution' : 'quiet'}`}>{WORDS[placedBy]}</p>
      )}
    </div>
  );
}
