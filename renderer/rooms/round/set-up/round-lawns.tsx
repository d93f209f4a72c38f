import { useMemo } from 'react';
import type { Book, Property, Round } from '../../../../core/book/index.ts';
import { type LeftOut, lawnsOf } from '../../../../core/round/programme/index.ts';
import { knownMeasure, putRecord, selectProperty, useFormat, useMeasures } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { setUpWords } from '../../../texts/round/index.ts';
import { Section } from '../../../ui/index.ts';
import { ChoiceFields } from './choice-fields.tsx';
import { LawnInRound } from './lawn-in-round.tsx';

type RoundLawnsProps = { readonly book: Book; readonly round: Round };

/** Names that are listed for one reason; the rest is counted. */
const MOST_LISTED = 200;

/** Which lawns the round is for, how many that are just now, and why the others are left out. */
export function RoundLawns({ book, round }: RoundLawnsProps) {
  const measured = useMeasures((state) => state.done);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is measured is asked for by lawn, and known better as measuring goes on.
  const { taken, left } = useMemo(() => lawnsOf(book, round, areaOf), [book, round, measured]);
  return (
    <Section title={setUpWords.lawns.lawns} aside={<span className="small">{commonWords.lawns(taken.length)}</span>}>
      <ChoiceFields
        of={setUpWords.lawns.ofRound}
        choice={round.choice}
        tagged={setUpWords.lawns.what}
        onChange={(choice) => {
          const { choice: _, ...rest } = round;
          return putRecord('rounds', choice === undefined ? rest : { ...rest, choice }, setUpWords.lawns.change);
        }}
      />
      {round.propertyIds !== 'all' && (
        <p className="quiet small">{setUpWords.lawns.fromList(round.propertyIds.length)}</p>
      )}
      <LeftOutList left={left} />
      <LawnInRound book={book} round={round} taken={taken} left={left} />
    </Section>
  );
}

/** Only what is known already: the window does not wait for measuring. */
function areaOf(property: Property): number | null {
  return knownMeasure(property)?.treatableSqFt ?? null;
}

function LeftOutList({ left }: { readonly left: readonly LeftOut[] }) {
  const words = useFormat();
  const groups = useMemo(() => byReason(left), [left]);
  if (left.length === 0) return <p className="quiet small">{setUpWords.lawns.noneLeftOut}</p>;
  return (
    <div className="left-out">
      <p className="small strong">{setUpWords.lawns.leftOut(left.length)}</p>
      {groups.map(([reason, lawns]) => (
        <details key={reason}>
          <summary>
            {words.said(reason)} <span className="quiet">({lawns.length})</span>
          </summary>
          <ul>
            {lawns.slice(0, MOST_LISTED).map(({ property }) => (
              <li key={property.id}>
                <button type="button" className="row-button" onClick={() => selectProperty(property.id)}>
                  {property.name}
                </button>
              </li>
            ))}
            {lawns.length > MOST_LISTED && <li>{commonWords.andMore(lawns.length - MOST_LISTED)}</li>}
          </ul>
        </details>
      ))}
    </div>
  );
}

/** Lawns with one reason together, most of them first. Sizes are told without their own figure. */
function byReason(left: readonly LeftOut[]): readonly (readonly [string, readonly LeftOut[]])[] {
  const groups = new Map<string, LeftOut[]>();
  for (const each of left) {
    const reason = each.words.replace(/^[\d,.]+ ft² to treat, /, '');
    groups.set(reason, [...(groups.get(reason) ?? []), each]);
  }
  return [...groups].toSorted(([, one], [, other]) => other.length - one.length);
}
