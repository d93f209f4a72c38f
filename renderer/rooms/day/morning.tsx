import { type Call, type FillVisit, type Morning, morningOf } from '../../../core/plan/live/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import type { Formatter } from '../../format/index.ts';
import { selectDay, selectStop, useBook, useCurrentPlan, useFormat } from '../../stores/index.ts';
import { dayWords } from '../../texts/day/index.ts';
import { commonWords } from '../../texts/index.ts';
import { Section } from '../../ui/index.ts';

/** What has to be looked through before the trucks leave: loads, fill points, calls, tight gates, rig by rig. */
export function MorningView({ day }: { readonly day: PlanDay }) {
  const book = useBook((state) => state.open?.book ?? null);
  const known = useCurrentPlan();
  const words = useFormat();
  if (book === null) return null;
  const days = known?.plan.days.filter((each) => each.date === day.date) ?? [];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reachable from the keyboard.
    <section className="morning" aria-label={dayWords.morning.label(words.longDate(day.date))} tabIndex={0}>
      {morningOf(book, days).map((each) => (
        <RigMorning key={each.rigId} morning={each} date={day.date} words={words} />
      ))}
    </section>
  );
}

type RigProps = { readonly morning: Morning; readonly date: string; readonly words: Formatter };

function RigMorning({ morning, date, words }: RigProps) {
  const { rigName, leaveSec, homeSec, carry, carryWeightLb, payloadLb, fills, calls, tightGates } = morning;
  const spare = payloadLb - carryWeightLb;
  const go = (stopNumber: number, propertyId: string) => {
    selectDay(date, morning.rigId);
    selectStop(stopNumber, propertyId);
  };
  return (
    <Section title={dayWords.morning.leavesAndHome(rigName, words.clock(leaveSec), words.clock(homeSec))}>
      <div className="morning-parts">
        <div>
          <h4>{dayWords.morning.carries(words.weight(carryWeightLb))}</h4>
          <p className={spare < 0 ? 'stop small' : 'quiet small'}>
            {spare < 0
              ? dayWords.morning.overPayload(words.weight(-spare), words.weight(payloadLb))
              : dayWords.morning.underPayload(words.weight(spare))}
          </p>
          <ul>
            {carry.map((each) => (
              <li key={`${each.what} ${each.id}`}>
                {each.label}
                {each.what === 'machine' ? '' : `, ${amountWords(each, words)}`}
              </li>
            ))}
          </ul>
        </div>
        <div>
          <h4>{fills.length === 0 ? dayWords.morning.noFillPoint : dayWords.morning.fillPoints}</h4>
          <ul>
            {fills.map((each) => (
              <li key={each.startSec}>{fillWords(each, words)}</li>
            ))}
          </ul>
        </div>
        <div>
          <h4>{calls.length === 0 ? dayWords.morning.nobodyToCall : dayWords.morning.callFirst(calls.length)}</h4>
          <ul>
            {calls.map((each) => (
              <li key={each.stopNumber}>
                <button type="button" className="row-button" onClick={() => go(each.stopNumber, each.propertyId)}>
                  {commonWords.stop(each.stopNumber, each.name)}
                </button>
                , {words.clock(each.arriveSec)}: {each.why.map((why) => WHY[why]).join(', ')}
              </li>
            ))}
          </ul>
        </div>
        <div>
          <h4>{tightGates.length === 0 ? dayWords.morning.noTightGate : dayWords.morning.tightGates}</h4>
          <ul>
            {tightGates.map((each) => (
              <li key={`${each.stopNumber} ${each.gate} ${each.machine}`}>
                <button type="button" className="row-button" onClick={() => go(each.stopNumber, each.propertyId)}>
                  {commonWords.stop(each.stopNumber, each.name)}
                </button>
                : {each.gate} {words.width(each.widthIn)}, {each.machine} {words.width(each.machineIn)}
              </li>
            ))}
          </ul>
        </div>
      </div>
    </Section>
  );
}

const WHY: Readonly<Record<Call['why'][number], string>> = {
  locked: dayWords.morning.gateLocked,
  pets: dayWords.morning.pets,
  children: dayWords.morning.children,
  hours: dayWords.morning.hours,
};

function amountWords({ amount, unit }: Morning['carry'][number], words: Formatter): string {
  if (unit === 'gal') return words.volume(amount);
  return unit === 'lb' || unit === 'oz' || unit === 'fl-oz'
    ? words.product(amount, unit)
    : `${words.number(amount)} ${unit}`;
}

function fillWords({ name, startSec, volumeGal, weightLb, beforeStop }: FillVisit, words: Formatter): string {
  const what = [...(volumeGal > 0 ? [words.volume(volumeGal)] : []), ...(weightLb > 0 ? [words.weight(weightLb)] : [])];
  const where = beforeStop > 0 ? dayWords.morning.beforeStop(beforeStop) : '';
  return `${words.clock(startSec)} ${name}: ${what.join(dayWords.morning.and)}${where}`;
}
