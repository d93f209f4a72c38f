import { useMemo, useState } from 'react';
import type { Book, Property, Treatment } from '../../../core/book/index.ts';
import { bandAreaSqFt, farthestFt, standsFor, treatableGround } from '../../../core/measure/index.ts';
import { zonePassesWith } from '../../../core/passes/index.ts';
import type { PlanDay, PlanStop, PlanTask } from '../../../core/plan/result/index.ts';
import {
  type FitCell,
  type FitColumn,
  fitTable,
  type Method,
  methodName,
  type Site,
} from '../../../core/reach/index.ts';
import { formatShare } from '../../../core/units/index.ts';
import { measureOf, useBook, useCurrentRound, useFormat, useSelection } from '../../stores/index.ts';
import { Choice, Empty, Section } from '../../ui/index.ts';
import { Loads, Truck } from './load-details.tsx';
import { StopPasses } from './stop-passes.tsx';

/** The selected stop: who can go, what was chosen and why, which loads it takes. */
export function StopInspector({ day }: { readonly day: PlanDay }) {
  const book = useBook((state) => state.open?.book ?? null);
  const number = useSelection((state) => state.stopNumber);
  const stop = day.stops.find((each) => each.number === number) ?? day.stops[0];
  const property = book?.properties.find((each) => each.id === stop?.propertyId);
  if (book === null || stop === undefined || property === undefined) {
    return <Empty title="No stop selected">Choose a stop in the list, on the map or on the ribbon.</Empty>;
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
      <p className="quiet small">Stop {stop.number}</p>
      <h2>{stop.name}</h2>
      <p className="quiet small">
        {words.clock(stop.arriveSec)} to {words.clock(stop.leaveSec)}, {words.duration(stop.leaveSec - stop.arriveSec)}{' '}
        on site after {words.duration(stop.driveSec)} of driving
      </p>
      {property.cautions.length > 0 && (
        <p className="caution small">Mind: {property.cautions.join(', ').replaceAll('-', ' ')}</p>
      )}
    </header>
  );
}

type FitProps = { readonly book: Book; readonly property: Property; readonly day: PlanDay; readonly stop: PlanStop };

/** Zones by methods: minutes where it fits, the reason where it does not. */
function Fit({ book, property, day, stop }: FitProps) {
  const treatments = book.treatments.filter((each) => stop.tasks.some((task) => task.treatmentId === each.id));
  const [wanted, setWanted] = useState('');
  const treatment = treatments.find((each) => each.id === wanted) ?? treatments[0];
  if (treatment === undefined) return null;
  return (
    <Section title="Who can go">
      {treatments.length > 1 ? (
        <Choice
          label="Treatment"
          value={treatment.id}
          options={treatments.map(({ id, name }) => ({ value: id, words: name }))}
          onChoose={setWanted}
        />
      ) : (
        <p className="quiet small">{treatment.name}</p>
      )}
      <FitTable book={book} property={property} day={day} stop={stop} treatment={treatment} />
    </Section>
  );
}

function siteOf(treatment: Treatment, wetGround: boolean): Site {
  const { coverage } = treatment;
  const site = { farthestFt, stands: standsFor, passes: zonePassesWith(treatableGround), wetGround };
  if (coverage.kind !== 'band') return site;
  return { ...site, treatedSqFt: (property, zone) => bandAreaSqFt(property, zone, coverage.widthFt, coverage.along) };
}

function FitTable({ book, property, day, stop, treatment }: FitProps & { readonly treatment: Treatment }) {
  const round = useCurrentRound();
  const words = useFormat();
  const rig = book.rigs.find((each) => each.id === day.rigId) ?? null;
  const table = useMemo(() => {
    const one = { ...book, properties: [property] };
    return fitTable(one, [measureOf(property)], treatment, rig, siteOf(treatment, round?.wetGround ?? false));
  }, [book, property, treatment, rig, round]);
  return (
    <div className="table-scroll">
      <table className="table fit-table">
        <thead>
          <tr>
            <th scope="col">zone</th>
            {table.columns.map((column) => (
              <th key={column.name} scope="col">
                {columnWords(book, column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.zoneId}>
              <th scope="row">{zoneName(property, row.zoneId)}</th>
              {row.cells.map((cell) => {
                const chosen = isChosen(stop, row.zoneId, treatment.id, cell.answer.method);
                return (
                  <td
                    key={JSON.stringify(cell.answer.method)}
                    className={`${cellLook(cell)}${chosen ? ' fit-chosen' : ''}`}
                  >
                    {cell.answer.can
                      ? `${words.duration((cell.minutes ?? 0) * 60)}${cell.answer.tight ? ', tight' : ''}`
                      : cell.answer.words}
                    {cell.trim !== null && (
                      <span className="small block">
                        of it {words.duration(cell.trim.minutes * 60)} hand trim of {words.area(cell.trim.areaSqFt)},{' '}
                        {cell.trim.name}
                      </span>
                    )}
                    {cell.notReachedSqFt > 0 && (
                      <span className="small block">{words.area(cell.notReachedSqFt)} not reached</span>
                    )}
                    {chosen && <span className="fit-tag">chosen</span>}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** A machine by its own name where only one of its heads is asked about. */
function columnWords(book: Book, { method, name }: FitColumn): string {
  if (method.kind === 'hand') return name;
  return book.machines.find((each) => each.id === method.machineId)?.name ?? name;
}

function zoneName(property: Property, zoneId: string): string {
  return property.zones.find((zone) => zone.id === zoneId)?.name ?? zoneId;
}

function isChosen(stop: PlanStop, zoneId: string, treatmentId: string, method: Method): boolean {
  return stop.tasks.some(
    (task) =>
      task.handTrim !== true &&
      task.zoneId === zoneId &&
      task.treatmentId === treatmentId &&
      JSON.stringify(sortedMethod(task.method)) === JSON.stringify(sortedMethod(method)),
  );
}

function sortedMethod(method: Method): readonly string[] {
  return method.kind === 'hand' ? [method.handMethodId] : [method.machineId, method.headId];
}

function cellLook(cell: FitCell): string {
  if (!cell.answer.can) return 'fit-no';
  return cell.answer.tight ? 'fit-tight' : 'fit-yes';
}

type ChosenProps = { readonly book: Book; readonly stop: PlanStop; readonly property: Property };

/** What is done on each zone, in order, and why so. */
function Chosen({ book, stop, property }: ChosenProps) {
  const words = useFormat();
  return (
    <Section title="Done here">
      <ol className="chosen-list">
        {stop.tasks.map((task: PlanTask) => (
          <li key={`${task.zoneId} ${task.treatmentId} ${task.step} ${task.handTrim === true}`}>
            <p>
              <b>
                {words.clock(task.startSec)} {zoneName(property, task.zoneId)}
                {task.handTrim === true && ', hand trim'}
              </b>
              , {words.area(task.areaSqFt)}, {methodName(book, task.method)}
              {task.person === 2 && ', second person'}
            </p>
            <TaskFigures task={task} />
            <p className="quiet small">{task.why}</p>
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
    return (
      <p className="small">
        {spent}; from field capacity, efficiency {formatShare(reckoned.fieldEfficiency)}
      </p>
    );
  }
  const { coveredSqFt, overlapShare, averageRate, worstRate, notReachedSqFt } = reckoned;
  return (
    <>
      <p className="small">
        {spent}; {words.area(coveredSqFt)} covered, {formatShare(overlapShare)} overlap; {words.number(averageRate, 2)}{' '}
        × the rate on average, {worstRate} × at most
      </p>
      {notReachedSqFt > 0 && (
        <p className="caution small">{words.area(notReachedSqFt)} not reached by the machine, left untreated</p>
      )}
    </>
  );
}

/** What the day would take if this stop were done by something else; nothing where nothing else can. */
function OtherWays({ stop }: { readonly stop: PlanStop }) {
  if (stop.otherWays.length === 0) return null;
  return (
    <Section title="Done another way">
      <ul className="chosen-list">
        {stop.otherWays.map((way) => (
          <li key={`${way.rigId} ${way.words}`} className="quiet small">
            {way.words}
          </li>
        ))}
      </ul>
    </Section>
  );
}
