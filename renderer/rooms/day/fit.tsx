import { useCallback, useState } from 'react';
import type { Book, Property, Treatment } from '../../../core/book/index.ts';
import { bandAreaSqFt, farthestFt, standsFor } from '../../../core/measure/index.ts';
import type { PassesOf } from '../../../core/passes/index.ts';
import type { PlanDay, PlanStop } from '../../../core/plan/result/index.ts';
import { type FitCell, type FitColumn, fitTable, type Method, type Site } from '../../../core/reach/index.ts';
import { ofAskedZones } from '../../../core/round/programme/index.ts';
import { Reckoning } from '../../passes/index.ts';
import { measureOf, useCurrentRound, useFormat, useWithPasses } from '../../stores/index.ts';
import { dayWords } from '../../texts/day/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Choice, Section } from '../../ui/index.ts';

type FitProps = { readonly book: Book; readonly property: Property; readonly day: PlanDay; readonly stop: PlanStop };

/** Zones by methods: minutes where it fits, the reason where it does not. */
export function Fit({ book, property, day, stop }: FitProps) {
  const treatments = book.treatments.filter((each) => stop.tasks.some((task) => task.treatmentId === each.id));
  const [wanted, setWanted] = useState('');
  const treatment = treatments.find((each) => each.id === wanted) ?? treatments[0];
  if (treatment === undefined) return null;
  return (
    <Section title={dayWords.fit.whoCanGo}>
      {treatments.length > 1 ? (
        <Choice
          label={dayWords.fit.treatment}
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

function siteOf(treatment: Treatment, wetGround: boolean, passes: PassesOf): Site {
  const { coverage } = treatment;
  const site = { farthestFt, stands: standsFor, passes, wetGround };
  if (coverage.kind !== 'band') return site;
  return { ...site, treatedSqFt: (property, zone) => bandAreaSqFt(property, zone, coverage.widthFt, coverage.along) };
}

function FitTable({ book, property, day, stop, treatment }: FitProps & { readonly treatment: Treatment }) {
  const round = useCurrentRound();
  const words = useFormat();
  const rig = book.rigs.find((each) => each.id === day.rigId) ?? null;
  const find = useCallback(
    (passes: PassesOf) => {
      const one = { ...book, properties: [property] };
      const site = siteOf(treatment, round?.wetGround ?? false, passes);
      const measure = measureOf(property);
      const asked =
        round === null ? measure : ofAskedZones(measure, round, treatment.id, property, () => measure.treatableSqFt);
      return fitTable(one, [asked], treatment, rig, site);
    },
    [book, property, treatment, rig, round],
  );
  const { found: table, isReckoning, fault } = useWithPasses(property, `${property.id} ${treatment.id}`, find);
  if (table === null) return <Reckoning fault={fault} />;
  return (
    <div className="table-scroll" aria-busy={isReckoning}>
      <table className="table fit-table">
        <thead>
          <tr>
            <th scope="col">{commonWords.zone}</th>
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
                      ? `${words.duration((cell.minutes ?? 0) * 60)}${cell.answer.tight ? dayWords.fit.tight : ''}`
                      : `${dayWords.whoCanGo.no}${words.said(cell.answer.words)}`}
                    {cell.trim !== null && (
                      <span className="fit-tag">
                        {dayWords.fit.handTrim(
                          words.duration(cell.trim.minutes * 60),
                          words.area(cell.trim.areaSqFt),
                          cell.trim.name,
                        )}
                      </span>
                    )}
                    {cell.notReachedSqFt > 0 && (
                      <span className="fit-tag">{dayWords.fit.notReached(words.area(cell.notReachedSqFt))}</span>
                    )}
                    {chosen && <span className="fit-tag">{dayWords.fit.chosen}</span>}
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

export function zoneName(property: Property, zoneId: string): string {
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
