import { ArrowRight } from 'lucide-react';
import type { Plan, PlanDay } from '../../../core/plan/result/index.ts';
import { homeSec } from '../../ribbon/index.ts';
import { goTo, selectDay, useFormat, useSelection } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { seasonWords } from '../../texts/round/index.ts';
import { Button, IssueList, Section } from '../../ui/index.ts';

type PlanProps = { readonly plan: Plan };
const DAY_TONES = 6;

const NUMBER_HEADS = [
  seasonWords.tables.home,
  seasonWords.tables.stops,
  commonWords.area,
  seasonWords.tables.refills,
  seasonWords.tables.paid,
  commonWords.cost,
] as const;

/** One row for every rig and date. */
export function DaysTable({ plan }: PlanProps) {
  if (plan.days.length === 0) return <p className="quiet">{seasonWords.tables.noDays}</p>;
  const severalRigs = new Set(plan.days.map((day) => day.rigId)).size > 1;
  return (
    <Section title={seasonWords.tables.days}>
      <div className="table-scroll">
        <table className="table table-days">
          <thead>
            <tr>
              <th scope="col">
                <span className="only-spoken">{commonWords.number}</span>
              </th>
              <th scope="col">{commonWords.day}</th>
              {severalRigs && <th scope="col">{commonWords.rig}</th>}
              {NUMBER_HEADS.map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <th scope="col">
                <span className="only-spoken">{seasonWords.tables.open}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.days.map((day, index) => (
              <DayRow key={`${day.date} ${day.rigId}`} day={day} index={index} showRig={severalRigs} />
            ))}
          </tbody>
        </table>
      </div>
    </Section>
  );
}

type DayRowProps = { readonly day: PlanDay; readonly index: number; readonly showRig: boolean };

function DayRow({ day, index, showRig }: DayRowProps) {
  const words = useFormat();
  const chosen = useSelection((state) => state.date === day.date && state.rigId === day.rigId);
  const refills = day.activities.filter((activity) => activity.kind === 'refill').length;
  const open = () => {
    selectDay(day.date, day.rigId);
    goTo('day');
  };
  return (
    <tr className={chosen ? 'row-selected' : undefined}>
      <td>
        <span className={`day-chip day-${(index % DAY_TONES) + 1}`}>{index + 1}</span>
      </td>
      <th scope="row">
        <button
          type="button"
          className="row-button"
          aria-pressed={chosen}
          onClick={() => selectDay(day.date, day.rigId)}
        >
          {words.date(day.date)}
        </button>
      </th>
      {showRig && <td>{day.rigName}</td>}
      <td className="number strong">{words.clock(homeSec(day))}</td>
      <td className="number">{day.stops.length}</td>
      <td className="number">{words.largeArea(day.treatedSqFt)}</td>
      <td className="number">{refills}</td>
      <td className="number">
        {words.duration(day.paidSec)}
        {day.overtimeSec > 0 && (
          <span className="caution block small">{seasonWords.tables.over(words.duration(day.overtimeSec))}</span>
        )}
      </td>
      <td className="number">{words.money(day.costUsd)}</td>
      <td className="number">
        <Button
          look="quiet"
          label={seasonWords.tables.openDay(words.longDate(day.date), day.rigName)}
          tip={seasonWords.tables.openThis}
          onPress={open}
        >
          <ArrowRight size={16} aria-hidden="true" />
        </Button>
      </td>
    </tr>
  );
}

/** Warnings and notes of the planning, worst first. */
export function PlanNotes({ plan }: PlanProps) {
  if (plan.issues.length === 0) return null;
  return (
    <Section title={seasonWords.tables.notes(plan.issues.length)}>
      <IssueList issues={plan.issues} />
    </Section>
  );
}
