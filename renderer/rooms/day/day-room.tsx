import { useMemo } from 'react';
import type { Plan, PlanDay } from '../../../core/plan/result/index.ts';
import { BackdropControls } from '../../backdrop/index.ts';
import { CommandButton } from '../../commands/index.ts';
import { MapPanel } from '../../map/index.ts';
import { NotYet } from '../../next/index.ts';
import { usePassScene } from '../../passes/index.ts';
import { cursorWords, LevelsRibbon, LevelsTable, stopAt } from '../../ribbon/index.ts';
import { type SceneWish, useBackdrop, useScene } from '../../scene/index.ts';
import {
  moveCursor,
  readLeg,
  selectStop,
  useBoard,
  useCurrentDay,
  useCurrentPlan,
  useCurrentRound,
  useFormat,
  useSelection,
  useView,
} from '../../stores/index.ts';
import { dayWords } from '../../texts/day/index.ts';
import { Empty, type ShownViews, Views, Workbench } from '../../ui/index.ts';
import { BoardQuestions } from './board/board-questions.tsx';
import { RigsBoard } from './board/rigs-board.tsx';
import { DayStops } from './day-stops.tsx';
import { HowSure } from './how-sure.tsx';
import { MorningView } from './morning.tsx';
import { StopInspector } from './stop-inspector.tsx';
import { UnderWay } from './under-way.tsx';
import { useDayChance } from './use-day-chance.ts';
import { WhoCanGo } from './who-can-go.tsx';

/** The dispatcher's room: one rig's day, its stops, its way, its levels. */
export function DayRoom() {
  const day = useCurrentDay();
  if (day === null) return <NoDay />;
  return (
    <>
      <Workbench
        room="day"
        title={dayWords.room.day}
        left={<DayStops day={day} />}
        leftLabel={dayWords.room.stops}
        right={<StopInspector day={day} />}
        rightLabel={dayWords.room.selectedStop}
        bottom={<Views room="day" label={dayWords.room.views} show={viewsOf(day)} />}
        bottomLabel={dayWords.room.views}
      >
        <DayMap day={day} />
      </Workbench>
      <BoardQuestions day={day} />
    </>
  );
}

/** What the dispatcher looks at below the map, one at a time. */
function viewsOf(day: PlanDay): ShownViews<'day'> {
  return {
    levels: () => <RibbonPanel day={day} />,
    rigs: () => <RigsBoard day={day} />,
    who: () => <WhoCanGo />,
    sure: () => <HowSure day={day} />,
    morning: () => <MorningView day={day} />,
    'under-way': () => <UnderWay />,
  };
}

function NoDay() {
  const round = useCurrentRound();
  const known = useCurrentPlan();
  const past = useBoard((state) => (round === null ? 0 : (state.past[round.id]?.length ?? 0)));
  if (round !== null && known !== null) return <NoStops lawns={lawnsOf(known.plan)} canGoBack={past > 0} />;
  return (
    <main className="middle">
      <h1 className="only-spoken">{dayWords.room.day}</h1>
      <NotYet title={dayWords.room.noDayPlannedYet} needs="plan">
        {dayWords.room.noDayAdvice}
      </NotYet>
    </main>
  );
}

type NoStopsProps = { readonly lawns: number; readonly canGoBack: boolean };

/** A plan without any stop: every lawn was taken out by hand, or none has found a place. */
function NoStops({ lawns, canGoBack }: NoStopsProps) {
  return (
    <main className="middle">
      <h1 className="only-spoken">{dayWords.room.day}</h1>
      <Empty
        title={dayWords.room.noStopLeft}
        actions={
          <>
            {canGoBack && <CommandButton id="day.back" look="main" />}
            <CommandButton id="go.round" look={canGoBack ? 'plain' : 'main'}>
              {dayWords.room.goToRound}
            </CommandButton>
          </>
        }
      >
        {dayWords.room.leftOut(lawns)}
      </Empty>
    </main>
  );
}

function lawnsOf({ unplaced }: Plan): number {
  return new Set(unplaced.map((each) => each.propertyId)).size;
}

function DayMap({ day }: { readonly day: PlanDay }) {
  const wish = useMemo((): SceneWish => ({ kind: 'day', day }), [day]);
  const scene = usePassScene(useScene(wish));
  const backdrop = useBackdrop();
  const words = useFormat();
  const zoomToAll = useView((state) => state.zoomToAll);
  const zoomToSelection = useView((state) => state.zoomToSelection);
  const select = (propertyId: string): void => {
    const stop = day.stops.find((each) => each.propertyId === propertyId);
    selectStop(stop?.number ?? null, propertyId);
  };
  return (
    <MapPanel
      label={dayWords.room.map}
      scene={scene}
      backdrop={backdrop}
      system={words.system}
      caption={scene.routeCaption}
      showAll={`${day.date} ${day.rigId} ${zoomToAll}`}
      showSelection={zoomToSelection}
      onSelect={select}
      onPass={readLeg}
    >
      <BackdropControls />
    </MapPanel>
  );
}

function RibbonPanel({ day }: { readonly day: PlanDay }) {
  const words = useFormat();
  const cursorSec = useSelection((state) => state.cursorSec);
  const stopNumber = useSelection((state) => state.stopNumber);
  const asTable = useView((state) => state.ribbonAsTable);
  const chance = useDayChance(day);
  const readout = cursorSec === null ? dayWords.room.readLevelsAdvice : cursorWords(day, cursorSec, words);
  // List, map and inspector show the stop that the cursor is at.
  const pointAt = (sec: number | null): void => {
    moveCursor(sec);
    const stop = sec === null ? null : stopAt(day, sec);
    if (stop !== null && stop.number !== stopNumber) selectStop(stop.number, stop.propertyId);
  };
  return (
    <div className="ribbon-panel">
      <h2 className="only-printed">
        {day.rigName}, {words.date(day.date)}
      </h2>
      <div className="ribbon-head">
        <span className={`ribbon-readout${cursorSec === null ? '' : ' ribbon-readout-live'}`} title={readout}>
          {readout}
        </span>
        <CommandButton id="day.table" look="quiet">
          {dayWords.room.asATable}
        </CommandButton>
      </div>
      {asTable ? (
        <LevelsTable day={day} words={words} />
      ) : (
        <LevelsRibbon
          day={day}
          words={words}
          homeRange={chance?.home ?? null}
          cursorSec={cursorSec}
          selectedStop={stopNumber}
          onCursor={pointAt}
          onStop={(number) => selectStop(number, day.stops.find((each) => each.number === number)?.propertyId ?? null)}
        />
      )}
    </div>
  );
}
