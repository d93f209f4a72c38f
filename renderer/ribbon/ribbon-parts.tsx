import type { PlanDay } from '../../core/plan/result/index.ts';
import type { Formatter } from '../format/index.ts';
import { ribbonWords } from '../texts/index.ts';
import { type DayEvent, homeSec } from './day-events.ts';
import { type HomeRange, LABEL_WIDTH, type Lane, type RibbonLayout } from './layout.ts';
import { levelAt, levelPaths } from './level-line.ts';
import { eventWords } from './readout.ts';
import { timeTicks } from './time-scale.ts';

type PartProps = { readonly layout: RibbonLayout; readonly words: Formatter };

export function Axis({ layout, words }: PartProps) {
  return (
    <g className="ribbon-axis">
      {timeTicks(layout.scale).map(({ sec, x }) => (
        <g key={sec}>
          <path d={`M${x} ${layout.blockTop - 4}V${layout.height}`} />
          <text x={x} y={layout.axisY} textAnchor="middle">
            {words.clock(sec)}
          </text>
        </g>
      ))}
    </g>
  );
}

export function Lanes({ layout, words }: PartProps) {
  return (
    <g>
      {layout.lanes.map((lane) => (
        <LaneDrawing key={lane.line.id} lane={lane} layout={layout} words={words} />
      ))}
    </g>
  );
}

function LaneDrawing({ lane, layout, words }: PartProps & { readonly lane: Lane }) {
  const { line, top, height } = lane;
  const { scale } = layout;
  const paths = levelPaths(line, scale, top, height);
  return (
    <g className={`lane lane-${line.kind}`}>
      <rect className="lane-back" x={scale.left} y={top} width={scale.right - scale.left} height={height} />
      <path className="lane-area" d={paths.area} />
      <path className="lane-floor" d={`M${scale.left} ${top + height}H${scale.right}`} />
      <path className="lane-line" d={paths.line} />
      <LaneName lane={lane} capacity={words.level(line.capacity, line.unit)} />
    </g>
  );
}

/** "Stand-on 35" above "tank, 18 gal"; in a low lane only what tells it apart. */
function LaneName({ lane, capacity }: { readonly lane: Lane; readonly capacity: string }) {
  const { line, top, height } = lane;
  const [owner = '', ...rest] = line.label.split(', ');
  const vessel = rest.join(', ');
  const below = vessel === '' ? capacity : `${vessel}, ${capacity}`;
  const right = LABEL_WIDTH - 12;
  const middle = top + height / 2;
  if (height < TWO_LINES) {
    return (
      <text className="lane-name" x={right} y={middle + 4} textAnchor="end">
        {shorten(vessel === '' ? owner : vessel, 16)}
        <title>{`${line.label}, ${capacity}`}</title>
      </text>
    );
  }
  return (
    <>
      <text className="lane-name" x={right} y={middle - 2} textAnchor="end">
        {shorten(owner, 17)}
        <title>{line.label}</title>
      </text>
      <text className="lane-capacity" x={right} y={middle + 12} textAnchor="end">
        {shorten(below, 20)}
      </text>
    </>
  );
}

const TWO_LINES = 28;

function shorten(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;
}

type BlocksProps = {
  readonly layout: RibbonLayout;
  readonly selectedStop: number | null;
  readonly onStop: (stopNumber: number) => void;
};

export function Blocks({ layout, selectedStop, onStop }: BlocksProps) {
  return (
    <g>
      {layout.blocks.map((block) => {
        const selected = block.kind === 'stop' && block.stopNumber === selectedStop;
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: the drawing is hidden from assistive technology; the list of stops and the arrow keys do the same.
          <g
            key={`${block.kind}-${block.startSec}`}
            className={`block block-${block.kind}${selected ? ' block-selected' : ''}`}
            data-subject={block.kind === 'stop' ? 'stop' : 'loads'}
            onClick={() => block.kind === 'stop' && onStop(block.stopNumber)}
            onContextMenu={() => block.kind === 'stop' && onStop(block.stopNumber)}
          >
            <title>{block.title}</title>
            <rect x={block.x} y={layout.blockTop} width={block.width} height={layout.blockHeight} rx="2" />
            {block.label !== '' && block.width >= 5 + 6.6 * block.label.length && (
              <text x={block.x + block.width / 2} y={layout.blockTop + layout.blockHeight / 2 + 4} textAnchor="middle">
                {block.label}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

type RefillsProps = PartProps & { readonly events: readonly DayEvent[]; readonly day: PlanDay };

/** A mark over every lane that a refill goes into, and a thin line down through the day. */
export function Refills({ layout, events, words }: RefillsProps) {
  const top = layout.blockTop + layout.blockHeight;
  return (
    <g>
      {events.map((event) => {
        if (event.kind !== 'refills') return null;
        const x = layout.scale.toX(event.sec);
        return (
          <g key={event.sec} className={`refill refill-${event.refill.fillPointId === '' ? 'rig' : 'point'}`}>
            <title>{eventWords(event, words)}</title>
            <path className="refill-line" d={`M${x} ${top}V${layout.height - 4}`} />
            <path className="refill-mark" d={`M${x - 4.5} ${top + 1}h9l-4.5 6.5z`} />
            <rect className="refill-target" x={x - 6} y={top - 2} width="12" height="14" />
          </g>
        );
      })}
    </g>
  );
}

type HomeProps = PartProps & { readonly day: PlanDay; readonly range: HomeRange | null };

/** When the rig is back, and between which times it is on 8 days of 10; its words stand beside whatever is still to do at the shop. */
export function Home({ layout, day, words, range }: HomeProps) {
  const x = layout.homeX;
  const { homeBand } = layout;
  return (
    <g className="home">
      {homeBand !== null && range !== null && (
        <rect
          className="home-band"
          x={homeBand.x}
          y={layout.blockTop}
          width={homeBand.width}
          height={layout.height - layout.blockTop}
        >
          <title>{ribbonWords.parts.homeSpan(words.clock(range.sec10), words.clock(range.sec90))}</title>
        </rect>
      )}
      <path d={`M${x} ${layout.blockTop - 4}V${layout.height - 2}`} />
      <text x={layout.scale.toX(day.endSec) + 7} y={layout.blockTop + layout.blockHeight / 2 + 4}>
        {ribbonWords.parts.home(words.clock(homeSec(day)))}
      </text>
    </g>
  );
}

/** The cursor with the level of every lane beside it; the figures keep inside the drawing. */
export function Cursor({ layout, words, sec }: PartProps & { readonly sec: number }) {
  const x = layout.scale.toX(sec);
  const flips = x > layout.scale.right - 60;
  return (
    <g className="cursor">
      <path d={`M${x} ${layout.blockTop - 6}V${layout.height - 2}`} />
      <g className="cursor-time">
        <rect x={x - 31} y={0} width={62} height={17} rx="2" />
        <text x={x} y={12.5} textAnchor="middle">
          {words.clock(sec)}
        </text>
      </g>
      {layout.lanes.map(({ line, top, height }) => {
        const level = levelAt(line, sec);
        const share = line.capacity > 0 ? level / line.capacity : 0;
        const y = top + height * (1 - Math.min(1, Math.max(0, share)));
        return (
          <g key={line.id} className={`cursor-level lane-${line.kind}`}>
            <circle cx={x} cy={y} r="3.2" />
            <text
              x={flips ? x - 7 : x + 7}
              y={Math.min(top + height - 3, Math.max(top + 11, y + 4))}
              textAnchor={flips ? 'end' : 'start'}
            >
              {words.level(level, line.unit)}
            </text>
          </g>
        );
      })}
    </g>
  );
}
