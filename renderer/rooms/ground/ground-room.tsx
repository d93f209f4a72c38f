import { useMemo } from 'react';
import { BackdropControls, PictureDesk } from '../../backdrop/index.ts';
import { MapPanel, partKey } from '../../map/index.ts';
import { usePassScene } from '../../passes/index.ts';
import { type SceneWish, useBackdrop, useScene } from '../../scene/index.ts';
import {
  choosePart,
  chooseProperty,
  followMapCentre,
  readLeg,
  useBook,
  useDraft,
  useFormat,
  useParts,
  useView,
} from '../../stores/index.ts';
import { groundWords } from '../../texts/ground/index.ts';
import { Workbench } from '../../ui/index.ts';
import { DrawBar } from './draw-bar.tsx';
import { DRAW_EVENTS, snapToBook } from './draw-events.ts';
import { Finished } from './draw-finished.tsx';
import { DrawLive, DrawPanel } from './draw-panel.tsx';
import { PartTools } from './draw-parts.tsx';
import { DrawStrip } from './draw-strip.tsx';
import { editedPart, useDrawWish } from './draw-wish.ts';
import { LawnInspector } from './lawn-inspector.tsx';
import { LawnList } from './lawn-list.tsx';

const WISH: SceneWish = { kind: 'ground' };

/** The estimator's room: lawns in a list and on the map, where they are drawn; what is known of the selected one beside. */
export function GroundRoom() {
  const scene = useGroundScene();
  const backdrop = useBackdrop();
  const wish = useDrawWish();
  const pointing = useDraft((state) => state.pointing);
  const inView = useDraft((state) => state.inView);
  const words = useFormat();
  const session = useBook((state) => state.open?.session ?? '');
  const zoomToAll = useView((state) => state.zoomToAll);
  const zoomToSelection = useView((state) => state.zoomToSelection);
  return (
    <Workbench
      room="ground"
      title={groundWords.groundRoom.ground}
      left={<LawnList />}
      leftLabel={groundWords.groundRoom.lawns}
      right={<Details />}
      rightLabel={groundWords.groundRoom.selectedLawn}
    >
      <MapPanel
        label={groundWords.groundRoom.map}
        scene={scene}
        system={words.system}
        backdrop={backdrop}
        caption={backdrop.tiles === null ? groundWords.groundRoom.noImagery : groundWords.groundRoom.drawnFromBook}
        showAll={`${session} ${zoomToAll}`}
        showSelection={zoomToSelection}
        onSelect={chooseProperty}
        onPart={choosePart}
        onPass={readLeg}
        onCentre={followMapCentre}
        drawing={{ wish, pointing, inView, events: DRAW_EVENTS, snapTo: snapToBook }}
      >
        <DrawStrip />
        <DrawBar />
        <BackdropControls canLay />
        <PictureDesk />
      </MapPanel>
      <DrawLive />
    </Workbench>
  );
}

/** The lawns, with what is chosen marked and what is being changed left to the drawing. */
function useGroundScene() {
  const scene = usePassScene(useScene(WISH));
  const parts = useParts((state) => state.parts);
  // Asked for as text, so that a step of drawing that changes neither leaves the lawns alone.
  const edited = useDraft((state) => JSON.stringify(editedPart(state.draft)));
  return useMemo(() => {
    const part = JSON.parse(edited) as ReturnType<typeof editedPart>;
    const hidden = part?.propertyId === scene.selectedPropertyId ? (part?.key ?? null) : null;
    return { ...scene, chosen: parts.map(partKey), hidden, ...(edited === 'null' ? {} : { passes: null }) };
  }, [scene, parts, edited]);
}

function Details() {
  const draft = useDraft((state) => state.draft);
  if (draft !== null) return <DrawPanel draft={draft} />;
  return (
    <>
      <Finished />
      <PartTools />
      <LawnInspector />
    </>
  );
}
