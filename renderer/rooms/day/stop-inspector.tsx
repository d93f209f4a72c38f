import type { Book, Property } from '../../../core/book/index.ts';
import type { PlanDay, PlanStop, PlanTask } from '../../../core/plan/result/index.ts';
import { methodName } from '../../../core/reach/index.ts';
import { CAUTION_WORDS } from '../../../core/reports/index.ts';
import { formatShare } from '../../../core/units/index.ts';
import { useBook, useFormat, useSelection } from '../../stores/index.ts';
import { stopsWords } from '../../texts/day/index.ts';
import { Empty, Section } from '../../ui/index.ts';
import { Fit, zoneName } from './fit.tsx';
import { Loads, Truck } from './load-details.tsx';
import { StopPasses } from './stop-passes.tsx';

/** The selected stop: who can go, what was chosen and why, which loads it takes. */
export function StopInspector({ day }: { readonly day: PlanDay }) {
  const book = useBook((state) => state.open?.book ?? null);
  const number = useSelection((state) => state.stopNumber);
  const stop = day.stops.find((each) => each.number === number) ?? day.stops[0];
  const property = book?.properties.find((each) => each.id === stop?.propertyId);
  if (book === null || stop === undefined || property === undefined) {
    return <Empty title={stopsWords.inspector.noStopSelected}>{stopsWords.inspector.noStopAdvice}</Empty>;
  }
  return (
    <div className="inspector">
      <StopHead stop={stop} property={property} />
      <Fit key={stop.number} book={book} property={property} day={day} stop={stop} />
      <Chosen book={book} stop={stop} property={property} />
      <StopPasses key={`passes ${stop.number}`} book={book} property={property} stop={stop} />
      <OtherWays stop={stop} />
      <Loads book={book} day={day} stop={stop} />
      <Truck book={book} day={day} />
    </div>
  );
}

function StopHead({ stop, property }: { readonly stop: PlanStop; readonly property: Property }) {
  const words = useFormat();
  return (
    <header className="inspector-head">
      <p className="quiet small">{stopsWords.inspector.stop(stop.number)}</p>
      <h2>{stop.name}</h2>
      <p className="quiet small">
        {stopsWords.inspector.onSite(
          words.clock(stop.arriveSec),
          words.clock(stop.leaveSec),
          words.duration(stop.leaveSec - stop.arriveSec),
          words.duration(stop.driveSec),
        )}
      </p>
      {property.cautions.length > 0 && (
        <p className="caution small">
          {stopsWords.inspector.mind(property.cautions.map((each) => CAUTION_WORDS[each]).join(', '))}
        </p>
      )}
    </header>
  );
}

type ChosenProps = { readonly book: Book; readonly stop: PlanStop; readonly property: Property };

/** What is done on each zone, in order, and why so. */
function Chosen({ book, stop, property }: ChosenProps) {
  const words = useFormat();
  return (
    <Section title={stopsWords.inspector.doneHere}>
      <ol className="chosen-list">
        {stop.tasks.map((task: PlanTask) => (
          <li key={`${task.zoneId} ${task.treatmentId} ${task.step} ${task.handTrim === true}`}>
            <p>
              <b>
                {words.clock(task.startSec)} {zoneName(property, task.zoneId)}
                {task.handTrim === true && stopsWords.inspector.handTrim}
              </b>
              , {words.area(task.areaSqFt)}, {methodName(book, task.method)}
              {task.person === 2 && stopsWords.inspector.secondPerson}
            </p>
            <TaskFigures task={task} />
            <p className="quiet small">{words.said(task.why)}</p>
          </li>
        ))}
      </ol>
    </Section>
  );
}

/** Minutes and amount; of a machine what it covers for what it treats, or the field efficiency that was used. */
function TaskFigures({ task }: { readonly task: PlanTask }) {
  const words = useFormat();
  const { reckoned, volumeGal, weightLb } = task;
  const amount = volumeGal > 0 ? words.volume(volumeGal) : weightLb > 0 ? words.weight(weightLb) : null;
  const spent = [words.duration(task.endSec - task.startSec), ...(amount === null ? [] : [amount])].join(', ');
  if (reckoned === undefined) return <p className="small">{spent}</p>;
  if (reckoned.from === 'field-capacity') {
    return <p className="small">{stopsWords.inspector.fromCapacity(spent, formatShare(reckoned.fieldEfficiency))}</p>;
  }
  const { coveredSqFt, overlapShare, averageRate, worstRate, notReachedSqFt } = reckoned;
  return (
    <>
      <p className="small">
        {stopsWords.inspector.covered(
          spent,
          words.area(coveredSqFt),
          formatShare(overlapShare),
          words.number(averageRate, 2),
          worstRate,
        )}
      </p>
      {notReachedSqFt > 0 && (
        <p className="caution small">{stopsWords.inspector.leftUntreated(words.area(notReachedSqFt))}</p>
      )}
    </>
  );
}

/** What the day would take if this stop were done by something else; nothing where nothing else can. */
function OtherWays({ stop }: { readonly stop: PlanStop }) {
  const words = useFormat();
  if (stop.otherWays.length === 0) return null;
  return (
    <Section title={stopsWords.inspector.doneAnotherWay}>
      <ul className="chosen-list">
        {stop.otherWays.map((way) => (
          <li key={`${way.rigId} ${way.words}`} className="quiet small">
            {words.said(way.words)}
          </li>
        ))}
      </ul>
    </Section>
  );
}
