import { Fragment, useState } from 'react';
import { type LawnTiming, MISSED, type SiteGroup, siteOffsetWords } from '../../../../core/round/timing/index.ts';
import { dayNumber } from '../../../../core/units/index.ts';
import type { Formatter } from '../../../format/index.ts';
import { goTo, selectProperty, useFormat } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { Button, Section } from '../../../ui/index.ts';
import { missWords, windowWords } from './when-words.ts';

type GroupsProps = { readonly groups: readonly SiteGroup[] };

/** When each kind of site opens, is best and closes, and how its lawns stand. */
export function SitesTable({ groups }: GroupsProps) {
  const words = useFormat();
  return (
    <Section title={whenWords.sites.title}>
      <div className="table-scroll">
        <table className="table">
          <thead>
            <tr>
              <th scope="col">{whenWords.sites.site}</th>
              <th scope="col" className="number">
                {whenWords.sites.lawns}
              </th>
              <th scope="col">{whenWords.sites.opens}</th>
              <th scope="col">{whenWords.sites.best}</th>
              <th scope="col">{commonWords.lastUsefulDay}</th>
              <th scope="col" className="number">
                {whenWords.sites.done}
              </th>
              <th scope="col" className="number">
                {whenWords.sites.willMissIt}
              </th>
            </tr>
          </thead>
          <tbody>
            {groups.map((group) => (
              <SiteRow key={group.sites.join(' ')} group={group} words={words} />
            ))}
          </tbody>
        </table>
      </div>
    </Section>
  );
}

function SiteRow({ group, words }: { readonly group: SiteGroup; readonly words: Formatter }) {
  const [isOpen, setOpen] = useState(false);
  const { opens, best, last } = windowWords(group.result.state, words);
  const done = group.lawns.filter((each) => each.verdict === 'done').length;
  const missed = group.lawns.filter((each) => MISSED.includes(each.verdict)).length;
  return (
    <>
      <tr>
        <th scope="row">
          {siteOffsetWords(group.sites, group.result, words.system)}
          {group.unset.length > 0 && <span className="caution block small">{whenWords.sites.noOffset}</span>}
        </th>
        <td className="number">
          <button type="button" className="row-button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
            {commonWords.lawns(group.lawns.length)}
          </button>
        </td>
        <td>{opens}</td>
        <td>{best}</td>
        <td>{last}</td>
        <td className="number">{done}</td>
        <td className={missed > 0 ? 'number stop strong' : 'number'}>{missed}</td>
      </tr>
      {isOpen && (
        <tr className="when-lawns">
          <td colSpan={COLUMNS}>
            <Names lawns={group.lawns} dayOf={(lawn) => dayWords(lawn, words)} />
          </td>
        </tr>
      )}
    </>
  );
}

const COLUMNS = 7;

function dayWords({ plannedOn, doneOn }: LawnTiming, words: Formatter): string {
  if (doneOn !== null) return whenWords.sites.doneOn(words.date(doneOn));
  return plannedOn === null ? '' : ` (${words.date(plannedOn)})`;
}

/** Lawns with one and the same reason. */
type Reason = { readonly why: string; readonly site: string; readonly lawns: readonly LawnTiming[] };

/** Lawns that miss their window, or are planned before it opens, by reason. */
export function reasonsOf(
  groups: readonly SiteGroup[],
  isWanted: (lawn: LawnTiming) => boolean,
  words: Formatter,
): readonly Reason[] {
  const reasons = new Map<string, { why: string; site: string; lawns: LawnTiming[] }>();
  for (const { sites, result, lawns } of groups) {
    const site = siteOffsetWords(sites, result, words.system);
    for (const lawn of lawns) {
      if (!isWanted(lawn)) continue;
      const why = missWords(lawn, result, words);
      const key = `${site} ${why}`;
      const known = reasons.get(key);
      if (known === undefined) reasons.set(key, { why, site, lawns: [lawn] });
      else known.lawns.push(lawn);
    }
  }
  return [...reasons.values()].toSorted((left, right) => firstDay(left) - firstDay(right));
}

/** Reasons are told by the day that is planned, the earliest first. */
function firstDay({ lawns: [first] }: Reason): number {
  return first?.plannedOn == null ? 0 : dayNumber(first.plannedOn);
}

const FIRST_NAMES = 12;

/** The lawns that will miss it, in words. */
export function MissedLawns({ groups }: GroupsProps) {
  const words = useFormat();
  const missed = reasonsOf(groups, (each) => MISSED.includes(each.verdict), words);
  const early = reasonsOf(groups, (each) => each.verdict === 'too-early', words);
  const count = missed.reduce((sum, each) => sum + each.lawns.length, 0);
  const unknown = groups.some(({ lawns }) => lawns.some((each) => each.verdict === 'unknown'));
  return (
    <>
      <Section title={whenWords.sites.missTitle(count)}>
        {count === 0 && <p className="quiet">{unknown ? whenWords.sites.notKnown : whenWords.sites.noneWill}</p>}
        <Reasons reasons={missed} />
      </Section>
      {early.length > 0 && (
        <Section title={whenWords.sites.tooEarly}>
          <Reasons reasons={early} />
        </Section>
      )}
    </>
  );
}

function Reasons({ reasons }: { readonly reasons: readonly Reason[] }) {
  return (
    <ul className="when-reasons">
      {reasons.map((reason) => (
        <ReasonItem key={`${reason.site} ${reason.why}`} reason={reason} />
      ))}
    </ul>
  );
}

function ReasonItem({ reason: { why, site, lawns } }: { readonly reason: Reason }) {
  return (
    <li>
      <p>
        <strong>{commonWords.lawns(lawns.length)}</strong> ({site}): {why}.
      </p>
      <Names lawns={lawns} />
    </li>
  );
}

type NamesProps = { readonly lawns: readonly LawnTiming[]; readonly dayOf?: (lawn: LawnTiming) => string };

/** Lawns by name, the first of them at once and the others when they are asked for. */
function Names({ lawns, dayOf }: NamesProps) {
  const [all, setAll] = useState(false);
  const shown = all ? lawns : lawns.slice(0, FIRST_NAMES);
  return (
    <p className="when-names">
      {shown.map((lawn, index) => (
        <Fragment key={lawn.property.id}>
          {index > 0 && ', '}
          <button
            type="button"
            className="row-button"
            onClick={() => {
              selectProperty(lawn.property.id);
              goTo('ground');
            }}
          >
            {lawn.property.name}
          </button>
          {dayOf?.(lawn)}
        </Fragment>
      ))}
      {lawns.length > shown.length && (
        <>
          {' '}
          <Button look="quiet" onPress={() => setAll(true)}>
            {commonWords.andMore(lawns.length - shown.length)}
          </Button>
        </>
      )}
    </p>
  );
}
