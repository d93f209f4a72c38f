import { distanceMetres } from '../../core/geometry/index.ts';
import type { PlaceConfidence } from '../../core/places/index.ts';
import { type SoughtLawn, tickSought, useFormat, usePlaces } from '../stores/index.ts';
import { Section, Tick } from '../ui/index.ts';

const CONFIDENCE_WORDS: Readonly<Record<PlaceConfidence, string>> = {
  good: 'in the block',
  fair: 'near the block, or by a like name',
  poor: 'a guess; look at it',
};

/** Lawns with an address and no outline, each with where its address is, or why that is not known. */
export function SoughtTable() {
  const sought = usePlaces((state) => state.sought);
  const isBusy = usePlaces((state) => state.isBusy);
  if (isBusy) return <p role="status">Looking addresses up…</p>;
  if (sought.length === 0) {
    return (
      <p className="quiet">
        No lawn of the book waits for a place: each has an outline, a place set by hand or from a file, or no address.
      </p>
    );
  }
  const found = sought.filter(({ answer }) => answer.kind === 'placed').length;
  return (
    <Section title={`${found} of ${sought.length} lawns have a place by their address`}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard. */}
      <section className="sought-scroll" aria-label="Lawns and their places" tabIndex={0}>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">
                <span className="only-spoken">place it</span>
              </th>
              <th scope="col">lawn</th>
              <th scope="col">found</th>
              <th scope="col" className="number">
                moves
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
            label={`Place ${property.name}`}
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
