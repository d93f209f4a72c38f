import { Trash2 } from 'lucide-react';
import { forgetStreets, openStreetFile, usePlaces } from '../stores/index.ts';
import { Button, Section } from '../ui/index.ts';

/** The street files that addresses are looked up in. */
export function StreetFiles() {
  const streets = usePlaces((state) => state.streets);
  return (
    <Section
      title="Street files"
      aside={<Button onPress={() => openStreetFile().catch(() => undefined)}>Open a street file…</Button>}
    >
      {streets.length === 0 ? (
        <p className="quiet">
          None yet. Open street lines with house numbers, as GeoJSON or a zipped Shapefile: such as a county's table
          with FULLNAME, LFROMADD, LTOADD, RFROMADD and RTOADD. Many counties, and the census, give them away.
        </p>
      ) : (
        <ul className="street-files">
          {streets.map(({ id, name, streets: count, pieces }) => (
            <li key={id}>
              <span>{name}</span>
              <span className="quiet small">
                {count.toLocaleString('en-US')} streets, {pieces.toLocaleString('en-US')} blocks
              </span>
              <Button
                look="quiet"
                label={`Take ${name} off`}
                tip="Look addresses up in it no more"
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
