import {
  type Comparison,
  DIFFERENCE_WORDS,
  type Difference,
  type FleetResult,
  TIME_KINDS,
  type TimeKind,
} from '../../../core/compare/index.ts';
import type { Formatter } from '../../format/index.ts';
import { useFormat } from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { fleetsWords } from '../../texts/round/index.ts';
import { MoreRows, TableHead, useFirstRows } from '../../ui/index.ts';

/** Two fleets side by side: figures with their difference, a picture of the hours, and what each leaves out. */
export function FleetFigures({ comparison }: { readonly comparison: Comparison }) {
  const words = useFormat();
  const { first, second, differences, workDiffers } = comparison;
  return (
    <>
      {workDiffers && (
        <p className="caution">
          {fleetsWords.figures.unlikeWork(first.name, lawns(first), second.name, lawns(second))}
        </p>
      )}
      <table className="table table-narrow">
        <TableHead
          columns={[
            fleetsWords.figures.forRound,
            { figures: first.name },
            { figures: second.name },
            { figures: fleetsWords.figures.difference },
          ]}
        />
        <tbody>
          {differences.map((row) => (
            <tr key={row.what}>
              <th scope="row">{DIFFERENCE_WORDS[row.what]}</th>
              <td className="number">{figure(row.what, row.first, words)}</td>
              <td className="number">{figure(row.what, row.second, words)}</td>
              <td className="number">{signed(row, words)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">{fleetsWords.figures.lastDay}</th>
            <td className="number">{first.lastDate === '' ? '' : words.date(first.lastDate)}</td>
            <td className="number">{second.lastDate === '' ? '' : words.date(second.lastDate)}</td>
            <td />
          </tr>
        </tbody>
      </table>
      <Season comparison={comparison} />
      <Hours first={first} second={second} words={words} />
      <LeftOut result={first} />
      <LeftOut result={second} />
    </>
  );
}

function lawns(result: FleetResult): string {
  const { length } = result.left;
  return length === 0
    ? commonWords.none
    : `${length} ${length === 1 ? fleetsWords.figures.lawn : fleetsWords.figures.lawns}`;
}

function figure(what: Difference['what'], value: number, words: Formatter): string {
  if (what === 'paid' || what === 'overtime') return words.duration(value);
  if (what === 'driven') return words.distance(value);
  return what === 'cost' ? words.money(value) : String(value);
}

function signed({ what, more }: Difference, words: Formatter): string {
  if (more === 0) return fleetsWords.figures.theSame;
  return `${figure(what, Math.abs(more), words)} ${more < 0 ? fleetsWords.figures.less : fleetsWords.figures.more}`;
}

function Season({ comparison: { first, second, seasonUsd } }: { readonly comparison: Comparison }) {
  const words = useFormat();
  const { all, running, fixed, rounds } = seasonUsd;
  const less = (usd: number): string =>
    `${words.money(Math.abs(usd))} ${usd <= 0 ? fleetsWords.figures.less : fleetsWords.figures.more}`;
  return (
    <p className="fleet-season">
      <b>{fleetsWords.figures.cheaper(second.name, less(all), first.name)}</b>
      {fleetsWords.figures.cheaperParts(less(running), rounds, less(fixed))}
    </p>
  );
}

const BAR_LEFT = 150;
const BAR_WIDTH = 560;
const BAR_HEIGHT = 26;
const ROW = 46;
const NAME_OF: Readonly<Record<TimeKind, string>> = {
  treating: fleetsWords.figures.treating,
  driving: fleetsWords.figures.driving,
  refilling: fleetsWords.figures.refilling,
  'at stops': fleetsWords.figures.settingUp,
  'at the shop': fleetsWords.figures.atShop,
  waiting: fleetsWords.figures.waiting,
};

type HoursProps = { readonly first: FleetResult; readonly second: FleetResult; readonly words: Formatter };

/** Paid hours of both as bars of the same scale, by what they go into. The table below says the same. */
function Hours({ first, second, words }: HoursProps) {
  const most = Math.max(first.paidSec, second.paidSec, 1);
  const scale = BAR_WIDTH / most;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be reached and scrolled from the keyboard.
    <figure className="fleet-hours" aria-label={fleetsWords.figures.hoursChart} tabIndex={0}>
      <svg
        width={BAR_LEFT + BAR_WIDTH + 90}
        height={2 * ROW + 6}
        viewBox={`0 0 ${BAR_LEFT + BAR_WIDTH + 90} ${2 * ROW + 6}`}
        aria-hidden="true"
      >
        <defs>
          {TIME_KINDS.map((kind, index) => (
            <pattern
              key={kind}
              id={`fleet-${index}`}
              width={4 + index}
              height={4 + index}
              patternUnits="userSpaceOnUse"
              patternTransform={`rotate(${index * 30})`}
            >
              <path className="fleet-hatch" d={`M0 0V${4 + index}`} />
            </pattern>
          ))}
        </defs>
        {[first, second].map((result, row) => (
          <Bar key={result.fleetId} result={result} top={row * ROW + 4} scale={scale} words={words} />
        ))}
      </svg>
      <table className="table table-narrow">
        <caption className="only-spoken">{fleetsWords.figures.hoursTitle}</caption>
        <TableHead columns={[fleetsWords.figures.hoursByKind, { figures: first.name }, { figures: second.name }]} />
        <tbody>
          {TIME_KINDS.map((kind, index) => (
            <tr key={kind}>
              <th scope="row">
                <svg width="18" height="12" aria-hidden="true">
                  <rect className="fleet-part" x="0.5" y="0.5" width="17" height="11" fill={`url(#fleet-${index})`} />
                </svg>{' '}
                {NAME_OF[kind]}
              </th>
              <td className="number">{words.duration(first.timeSec[kind])}</td>
              <td className="number">{words.duration(second.timeSec[kind])}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}

type BarProps = {
  readonly result: FleetResult;
  readonly top: number;
  readonly scale: number;
  readonly words: Formatter;
};

function Bar({ result, top, scale, words }: BarProps) {
  let x = BAR_LEFT;
  return (
    <g>
      <text className="fleet-bar-name" x={BAR_LEFT - 10} y={top + 17} textAnchor="end">
        {result.name.length > 20 ? `${result.name.slice(0, 19)}…` : result.name}
      </text>
      {TIME_KINDS.map((kind, index) => {
        const width = result.timeSec[kind] * scale;
        const at = x;
        x += width;
        return (
          <rect
            key={kind}
            className="fleet-part"
            x={at}
            y={top}
            width={Math.max(0, width)}
            height={BAR_HEIGHT}
            fill={`url(#fleet-${index})`}
          >
            <title>{`${NAME_OF[kind]}: ${words.duration(result.timeSec[kind])}`}</title>
          </rect>
        );
      })}
      <text className="fleet-bar-name" x={x + 8} y={top + 17}>
        {words.duration(result.paidSec)}
      </text>
    </g>
  );
}

function LeftOut({ result }: { readonly result: FleetResult }) {
  const words = useFormat();
  const { shown, hidden, showMore } = useFirstRows(result.left);
  if (result.left.length === 0) return null;
  return (
    <>
      <h4>{fleetsWords.figures.leavesOut(result.name, lawns(result))}</h4>
      <ul className="fleet-left">
        {shown.map(({ propertyId, name, why }) => (
          <li key={propertyId}>
            {name}: {words.said(why.join('; '))}
          </li>
        ))}
      </ul>
      <MoreRows hidden={hidden} what={fleetsWords.figures.lawn} onMore={showMore} />
    </>
  );
}
