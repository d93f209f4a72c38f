import type { BookRoads } from '../../../../core/book/index.ts';
import { LEAST_TRIPS } from '../../../../core/travel/index.ts';
import { CommandButton } from '../../../commands/index.ts';
import { changeRoads, takeLearned, useFormat, useRoads } from '../../../stores/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';
import { Button, Section, TableHead, Tick } from '../../../ui/index.ts';
import { classWords, factorWords } from './words.ts';

/** What real drives say of the speeds: looked at first, then taken over, and switched off at any time. */
export function LearnedSpeeds({ roads }: { readonly roads: BookRoads | undefined }) {
  const words = useFormat();
  const learnt = useRoads((state) => state.learnt);
  const learned = roads?.learned;
  const enough = learnt?.classes.some((each) => each.isUsed) === true;
  return (
    <Section
      title={roadsWords.learned.title}
      aside={<CommandButton id="shed.roads-learn">{roadsWords.learned.look}</CommandButton>}
    >
      <p className="quiet small">{roadsWords.learned.about(LEAST_TRIPS)}</p>
      {learned !== undefined && (
        <>
          <Tick
            label={roadsWords.learned.use(words.date(learned.on))}
            checked={learned.use}
            onChange={(use) => {
              changeRoads(
                { learned: { ...learned, use } },
                use ? roadsWords.learned.useLearned : roadsWords.learned.leaveLearned,
              );
            }}
          />
          <ul className="road-places">
            {learned.factors.map((each) => (
              <li key={each.roadClass}>
                <span>{classWords(each.roadClass)}</span>
                <span className="quiet small">
                  {roadsWords.learned.fromDrives(factorWords(each.timeFactor), each.trips)}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      {learnt !== null && (
        <>
          <p>
            {learnt.drives === 0 ? roadsWords.learned.noDrives : roadsWords.learned.usable(learnt.used, learnt.drives)}
          </p>
          {learnt.classes.length > 0 && (
            <table className="table">
              <TableHead
                columns={[
                  roadsWords.learned.road,
                  { figures: roadsWords.learned.drives },
                  roadsWords.learned.whatTheySay,
                ]}
              />
              <tbody>
                {learnt.classes.map((each) => (
                  <tr key={each.roadClass}>
                    <th scope="row">{classWords(each.roadClass)}</th>
                    <td className="number">{each.trips}</td>
                    <td>{each.isUsed ? factorWords(each.timeFactor) : roadsWords.learned.tooFew(LEAST_TRIPS)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
          <Button
            whyNot={enough ? null : roadsWords.learned.noClassReady(LEAST_TRIPS)}
            onPress={() => takeLearned(learnt)}
          >
            {roadsWords.learned.useNow}
          </Button>
        </>
      )}
    </Section>
  );
}
