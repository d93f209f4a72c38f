import type { BookRoads } from '../../../../core/book/index.ts';
import { LEAST_TRIPS } from '../../../../core/travel/index.ts';
import { changeRoads, learnRoads, takeLearned, useFormat, useRoads } from '../../../stores/index.ts';
import { Button, Section, TableHead, Tick } from '../../../ui/index.ts';
import { classWords, factorWords } from './words.ts';

/** What real drives say of the speeds: looked at first, then taken over, and switched off at any time. */
export function LearnedSpeeds({ roads }: { readonly roads: BookRoads | undefined }) {
  const words = useFormat();
  const learnt = useRoads((state) => state.learnt);
  const hasRoads = useRoads((state) => state.status?.roads != null);
  const learned = roads?.learned;
  const enough = learnt?.classes.some((each) => each.isUsed) === true;
  return (
    <Section
      title="Learned from your drives"
      aside={
        <Button
          whyNot={hasRoads ? null : 'Import roads first: drives are laid along them.'}
          onPress={() => learnRoads().catch(() => undefined)}
        >
          Look at the drives
        </Button>
      }
    >
      <p className="quiet small">
        Drive times written down in the Day room correct the times on each class of road that {LEAST_TRIPS} drives or
        more tell of.
      </p>
      {learned !== undefined && (
        <>
          <Tick
            label={`use what was learned on ${words.date(learned.on)}`}
            checked={learned.use}
            onChange={(use) => {
              changeRoads({ learned: { ...learned, use } }, use ? 'Use learned times' : 'Leave learned times');
            }}
          />
          <ul className="road-places">
            {learned.factors.map((each) => (
              <li key={each.roadClass}>
                <span>{classWords(each.roadClass)}</span>
                <span className="quiet small">
                  {factorWords(each.timeFactor)}, from {each.trips} drives
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      {learnt !== null && (
        <>
          <p>
            {learnt.drives === 0
              ? 'No drive times have been written down yet.'
              : `${learnt.used} of ${learnt.drives} drives went straight from place to place and can be used.`}
          </p>
          {learnt.classes.length > 0 && (
            <table className="table">
              <TableHead columns={['road', { figures: 'drives' }, 'what they say']} />
              <tbody>
                {learnt.classes.map((each) => (
                  <tr key={each.roadClass}>
                    <th scope="row">{classWords(each.roadClass)}</th>
                    <td className="number">{each.trips}</td>
                    <td>{each.isUsed ? factorWords(each.timeFactor) : `too few: ${LEAST_TRIPS} are needed`}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
          <Button
            whyNot={enough ? null : `No class of road has ${LEAST_TRIPS} drives yet.`}
            onPress={() => takeLearned(learnt)}
          >
            Use these from now on
          </Button>
        </>
      )}
    </Section>
  );
}
