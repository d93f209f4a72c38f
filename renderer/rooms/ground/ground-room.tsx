import { MapPanel } from '../../map/index.ts';
import { type SceneWish, useScene } from '../../scene/index.ts';
import { followMapCentre, selectZone, useBook, useFormat, useView } from '../../stores/index.ts';
import { Workbench } from '../../ui/index.ts';
import { LawnInspector } from './lawn-inspector.tsx';
import { LawnList } from './lawn-list.tsx';

const WISH: SceneWish = { kind: 'ground' };

/** The estimator's room: lawns in a list and on the map, what is known of the selected one beside them. */
export function GroundRoom() {
  const scene = useScene(WISH);
  const words = useFormat();
  const session = useBook((state) => state.open?.session ?? '');
  const zoomToAll = useView((state) => state.zoomToAll);
  const zoomToSelection = useView((state) => state.zoomToSelection);
  return (
    <Workbench
      room="ground"
      title="Ground"
      left={<LawnList />}
      leftLabel="Lawns"
      right={<LawnInspector />}
      rightLabel="Selected lawn"
    >
      <MapPanel
        label="Map of the lawns"
        scene={scene}
        system={words.system}
        caption="drawn from the book, no imagery"
        showAll={`${session} ${zoomToAll}`}
        showSelection={zoomToSelection}
        onSelect={selectZone}
        onCentre={followMapCentre}
      />
    </Workbench>
  );
}
