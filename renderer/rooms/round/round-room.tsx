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
import { type View, Views, Workbench } from '../../ui/index.ts';
import { BuyView } from './buy-view.tsx';
import { CalendarView } from './calendar/index.ts';
import { FleetsView } from './fleets-view.tsx';
import { ProgrammesView } from './programmes/index.ts';
import { RoundLedger } from './round-ledger.tsx';
import { RoundSetUp } from './round-set-up.tsx';
import { SeasonView } from './season-view.tsx';
import { WhenView } from './when/index.ts';

/** What the owner looks at, one at a time. */
const VIEWS: readonly View[] = [
  { id: 'plan', title: 'Plan', show: () => <RoundLedger /> },
  { id: 'when', title: 'When', show: () => <WhenView /> },
  { id: 'calendar', title: 'Calendar', show: () => <CalendarView /> },
  { id: 'programmes', title: 'Programmes', show: () => <ProgrammesView /> },
  { id: 'season', title: 'Season', show: () => <SeasonView /> },
  { id: 'buy', title: 'Buy', show: () => <BuyView /> },
  { id: 'fleets', title: 'Fleets', show: () => <FleetsView /> },
];

/** The owner's room for a round: what is done where and by when, and the days that come of it. */
export function RoundRoom() {
  return (
    <Workbench
      room="round"
      title="Round"
      left={<RoundSetUp />}
      leftLabel="Round"
      right={<RoundMap />}
      rightLabel="Lawns by day"
    >
      <Views room="round" label="Views of the round" views={VIEWS} />
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
        label="Map of the round"
        scene={scene}
        backdrop={backdrop}
        system={words.system}
        caption={known === null ? 'not planned' : 'numbers: days'}
        showAll={`${round?.id ?? ''} ${zoomToAll}`}
        showSelection={0}
        onSelect={selectProperty}
      >
        <BackdropControls />
      </MapPanel>
    </div>
  );
}
