import { Trash2 } from 'lucide-react';
import { formatNumber } from '../format/index.ts';
import { forgetStreets, openStreetFile, usePlaces } from '../stores/index.ts';
import { addressesWords } from '../texts/index.ts';
import { Button, Section } from '../ui/index.ts';

/** The street files that addresses are looked up in. */
export function StreetFiles() {
  const streets = usePlaces((state) => state.streets);
  return (
    <Section
      title={addressesWords.streets.title}
      aside={<Button onPress={() => openStreetFile().catch(() => undefined)}>{addressesWords.streets.open}</Button>}
    >
      {streets.length === 0 ? (
        <p className="quiet">{addressesWords.streets.noneYet}</p>
      ) : (
        <ul className="street-files">
          {streets.map(({ id, name, streets: count, pieces }) => (
            <li key={id}>
              <span>{name}</span>
              <span className="quiet small">
                {addressesWords.streets.counts(formatNumber(count), formatNumber(pieces))}
              </span>
              <Button
                look="quiet"
                label={addressesWords.streets.takeOff(name)}
                tip={addressesWords.streets.takeOffNote}
                onPress={() => forgetStreets(id).catch(() => undefined)}
              >
                <Trash2 size={14} aria-hidden="true" />
              </Button>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
