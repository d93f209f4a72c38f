import { MapPin } from 'lucide-react';
import type { Property } from '../../../core/book/index.ts';
import { changeProperty, openPlaces } from '../../stores/index.ts';
import { groundWords } from '../../texts/ground/index.ts';
import { Button, DraftInput } from '../../ui/index.ts';

const WORDS: Readonly<Record<NonNullable<Property['placedBy']>, string>> = {
  hand: groundWords.backgroundPlacedBy.byHand,
  file: groundWords.backgroundPlacedBy.byFile,
  'address-range': groundWords.backgroundPlacedBy.byAddressRange,
};

/** The address of a lawn, and how its place came to be known. */
export function PlacedBy({ property }: { readonly property: Property }) {
  const { placedBy } = property;
  return (
    <div className="placed-by">
      <DraftInput
        label={groundWords.backgroundPlacedBy.address}
        text={property.address}
        placeholder={groundWords.backgroundPlacedBy.addressPlaceholder}
        onCommit={(address) =>
          changeProperty(property, { address: address.slice(0, 4000) }, groundWords.backgroundPlacedBy.changeAddress)
        }
      />
      <Button
        look="quiet"
        label={groundWords.backgroundPlacedBy.findPlacesAddress}
        tip={groundWords.backgroundPlacedBy.findPlacesAddress}
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
