import { useMemo } from 'react';
import { BackdropControls } from '../../backdrop/index.ts';
import { MapPanel } from '../../map/index.ts';
import { type SceneWish, useBackdrop, useScene } from '../../scene/index.ts';
import {
  selectProperty,
  useCurrentPlan,
  useCurrentRound,
  useFormat,
  useSelection,
  useView,
} from '../../stores/index.ts';
import { commonWords } from '../../texts/index.ts';
import { roundWords } from '../../texts/round/index.ts';
import { type ShownViews, Views, Workbench } from '../../ui/index.ts';
import { BuyView } from './buy-view.tsx';
import { CalendarView } from './calendar/index.ts';
import { FleetsView } from './fleets-view.tsx';
import { ProgrammesView } from './programmes/index.ts';
import { RoundLedger } from './round-ledger.tsx';
import { RoundSetUp } from './round-set-up.tsx';
import { SeasonView } from './season-view.tsx';
import { WhenView } from './when/index.ts';

/** What the owner looks at, one at a time. */
const VIEWS: ShownViews<'round'> = {
  plan: () => <RoundLedger />,
  when: () => <WhenView />,
  calendar: () => <CalendarView />,
  programmes: () => <ProgrammesView />,
  season: () => <SeasonView />,
  buy: () => <BuyView />,
  fleets: () => <FleetsView />,
};

/** The owner's room for a round: what is done where and by when, and the days that come of it. */
export function RoundRoom() {
  return (
    <Workbench
      room="round"
      title={roundWords.room.title}
      left={<RoundSetUp />}
      leftLabel={roundWords.room.title}
      right={<RoundMap />}
      rightLabel={roundWords.room.lawnsByDay}
    >
      <Views room="round" label={roundWords.room.views} show={VIEWS} />
    </Workbench>
  );
}

function RoundMap() {
  const round = useCurrentRound();
  const known = useCurrentPlan();
  const date = useSelection((state) => state.date);
  const rigId = useSelection((state) => state.rigId);
  const zoomToAll = useView((state) => state.zoomToAll);
  const words = useFormat();
  const wish = useMemo<SceneWish>(
    () => ({ kind: 'round', plan: known?.plan ?? null, date, rigId }),
    [known, date, rigId],
  );
  const scene = useScene(wish);
  const backdrop = useBackdrop();
  return (
    <div className="map-in-panel">
      <MapPanel
        label={roundWords.room.map}
        scene={scene}
        backdrop={backdrop}
        system={words.system}
        caption={known === null ? commonWords.notPlanned : roundWords.room.mapCaption}
        showAll={`${round?.id ?? ''} ${zoomToAll}`}
        showSelection={0}
        onSelect={selectProperty}
      >
        <BackdropControls />
      </MapPanel>
    </div>
  );
}
