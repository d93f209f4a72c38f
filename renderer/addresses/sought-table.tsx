import { distanceMetres } from '../../core/geometry/index.ts';
import type { PlaceConfidence } from '../../core/places/index.ts';
import { type SoughtLawn, tickSought, useFormat, usePlaces } from '../stores/index.ts';
import { addressesWords, commonWords } from '../texts/index.ts';
import { Section, Tick } from '../ui/index.ts';

const CONFIDENCE_WORDS: Readonly<Record<PlaceConfidence, string>> = {
  good: addressesWords.sought.good,
  fair: addressesWords.sought.fair,
  poor: addressesWords.sought.poor,
};

/** Lawns with an address and no outline, each with where its address is, or why that is not known. */
export function SoughtTable() {
  const sought = usePlaces((state) => state.sought);
  const isBusy = usePlaces((state) => state.isBusy);
  if (isBusy) return <p role="status">{addressesWords.sought.looking}</p>;
  if (sought.length === 0) {
    return <p className="quiet">{addressesWords.sought.noneWaits}</p>;
  }
  const found = sought.filter(({ answer }) => answer.kind === 'placed').length;
  return (
    <Section title={addressesWords.sought.found(found, sought.length)}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard. */}
      <section className="sought-scroll" aria-label={addressesWords.sought.tableLabel} tabIndex={0}>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">
                <span className="only-spoken">{addressesWords.sought.placeHead}</span>
              </th>
              <th scope="col">{commonWords.lawn}</th>
              <th scope="col">{addressesWords.sought.foundHead}</th>
              <th scope="col" className="number">
                {addressesWords.sought.movesHead}
              </th>
            </tr>
          </thead>
          <tbody>
            {sought.map((each) => (
              <SoughtRow key={each.property.id} sought={each} />
            ))}
          </tbody>
        </table>
      </section>
    </Section>
  );
}

function SoughtRow({ sought: { property, answer, chosen } }: { readonly sought: SoughtLawn }) {
  const words = useFormat();
  const isPlaced = answer.kind === 'placed';
  return (
    <tr>
      <td>
        {isPlaced && (
          <Tick
            label={addressesWords.sought.placeLawn(property.name)}
            shown={false}
            checked={chosen}
            onChange={(on) => tickSought(property.id, on)}
          />
        )}
      </td>
      <th scope="row">
        {property.name}
        {property.address !== property.name && <span className="quiet small sought-address">{property.address}</span>}
      </th>
      <td>
        {isPlaced ? (
          <>
            {answer.how}
            <span className={`small sought-address ${answer.confidence === 'poor' ? 'caution' : 'quiet'}`}>
              {CONFIDENCE_WORDS[answer.confidence]}
            </span>
          </>
        ) : (
          <span className="caution">{answer.reason}</span>
        )}
      </td>
      <td className="number">{isPlaced && words.distance(distanceMetres(property.parking, answer.at))}</td>
    </tr>
  );
}
