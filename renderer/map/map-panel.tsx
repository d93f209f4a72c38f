import { Locate, Maximize, Minus, Plus } from 'lucide-react';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { CommandButton, useOffer } from '../commands/index.ts';
import { mapWords } from '../texts/index.ts';
import type { MapBackdrop } from './background-scene.ts';
import type { DrawWish } from './drawing/draw-surface.ts';
import { metresPerPixel, roundStep } from './grid.ts';
import type { LawnEvents } from './lawn-layers.ts';
import { type MapDrawing, type MapFrame, type MapLook, type MapView, openMap } from './map-view.ts';
import { MapPatterns } from './patterns.tsx';
import type { MapScene } from './scene.ts';

/** Of the map's width or height, by which it is moved at once. */
const STEP_SHARE = 0.25;

type MapPanelProps = {
  readonly label: string;
  readonly scene: MapScene;
  /** What lies behind the lawns; only the grid where it is left out. */
  readonly backdrop?: MapBackdrop;
  readonly system: 'us' | 'metric';
  /** Said in the corner, for instance that routes are straight lines. */
  readonly caption: string;
  /** When one of these changes, the map shows everything, or the selected lawn. */
  readonly showAll: string;
  readonly showSelection: number;
  readonly onSelect: (propertyId: string, zoneId: string | null) => void;
  readonly onCentre?: (centre: () => readonly [number, number]) => void;
  /** A pass was pointed at, where any are shown: its number along the way. */
  readonly onPass?: (leg: number) => void;
  /** Where parts of lawns can be chosen. */
  readonly onPart?: LawnEvents['onPart'];
  /** Where the map is drawn on: what there is to draw now, and where its events go. */
  readonly drawing?: MapDrawing & {
    readonly wish: DrawWish | null;
    readonly pointing: MapPointing;
    readonly inView: readonly (readonly [number, number])[] | null;
  };
  /** Over the map: tools. */
  readonly children?: ReactNode;
};

/** Asks for the crosshair; a larger count asks anew. */
export type MapPointing = { readonly count: number; readonly at: readonly [number, number] | null };

/** What each room's map showed when it was left, and the last wish to see a lawn that it has met. */
const leftLooks = new Map<string, MapLook>();
const metWishes = new Map<string, number>();

/** The map with its grid, scale bar and buttons. The list beside it holds the same lawns for those who do not use a map. */
export function MapPanel(props: MapPanelProps) {
  const { label, scene, system, caption, showAll, showSelection, onSelect, onCentre, onPart, onPass, drawing } = props;
  const box = useRef<HTMLDivElement>(null);
  const view = useRef<MapView | null>(null);
  const handlers = useRef({ onSelect, onCentre, onPart, onPass, drawing });
  handlers.current = { onSelect, onCentre, onPart, onPass, drawing };
  const sceneNow = useRef(scene);
  sceneNow.current = scene;
  const lookKey = useRef('');
  lookKey.current = `${label} ${showAll}`;
  const [frame, setFrame] = useState<MapFrame | null>(null);

  useEffect(() => {
    if (box.current === null) return;
    const opened = openMap(box.current, {
      onSelect: (propertyId, zoneId) => handlers.current.onSelect(propertyId, zoneId),
      onFrame: setFrame,
      onPass: (leg) => handlers.current.onPass?.(leg),
      ...(handlers.current.onPart === undefined ? {} : { onPart: (part, add) => handlers.current.onPart?.(part, add) }),
      drawing: handlers.current.drawing ?? null,
    });
    view.current = opened;
    handlers.current.onCentre?.(opened.centre);
    const observer = new ResizeObserver(() => opened.resized());
    observer.observe(box.current);
    return () => {
      observer.disconnect();
      leftLooks.set(lookKey.current, opened.look());
      opened.close();
      view.current = null;
    };
  }, []);

  useEffect(() => {
    view.current?.show(scene);
  }, [scene]);

  const { backdrop } = props;
  useEffect(() => {
    if (backdrop !== undefined) view.current?.backdrop(backdrop);
  }, [backdrop]);

  const wish = drawing?.wish ?? null;
  useEffect(() => {
    view.current?.draw(wish);
  }, [wish]);

  const inView = drawing?.inView ?? null;
  useEffect(() => {
    if (inView !== null) view.current?.keepInView(inView);
  }, [inView]);

  const pointing = drawing?.pointing;
  useEffect(() => {
    if (pointing !== undefined && pointing.count > 0) view.current?.pointAt(pointing.at);
  }, [pointing]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: showAll is the wish to see everything again.
  useEffect(() => {
    view.current?.resized();
    const left = leftLooks.get(lookKey.current);
    if (left === undefined) view.current?.fitAll();
    else view.current?.lookAgain(left);
  }, [showAll]);

  useEffect(() => {
    const { selectedPropertyId } = sceneNow.current;
    if (showSelection === (metWishes.get(label) ?? 0)) return;
    metWishes.set(label, showSelection);
    if (selectedPropertyId !== null) view.current?.fitProperty(selectedPropertyId);
  }, [showSelection, label]);

  useOffer('view.closer', { whyNot: null, run: () => view.current?.zoomBy(0.5) });
  useOffer('view.farther', { whyNot: null, run: () => view.current?.zoomBy(-0.5) });
  useOffer('view.north', { whyNot: null, run: () => view.current?.panBy(0, -STEP_SHARE) });
  useOffer('view.south', { whyNot: null, run: () => view.current?.panBy(0, STEP_SHARE) });
  useOffer('view.east', { whyNot: null, run: () => view.current?.panBy(STEP_SHARE, 0) });
  useOffer('view.west', { whyNot: null, run: () => view.current?.panBy(-STEP_SHARE, 0) });
  return (
    <section className="map-panel" aria-label={label}>
      {frame !== null && <Grid frame={frame} system={system} />}
      <MapPatterns />
      <div ref={box} className="map" role="application" aria-label={mapWords.panel.label(label)} />
      {props.children}
      <div className="map-buttons">
        <CommandButton id="view.closer" bare>
          <Plus size={16} aria-hidden="true" />
        </CommandButton>
        <CommandButton id="view.farther" bare>
          <Minus size={16} aria-hidden="true" />
        </CommandButton>
        <CommandButton id="view.all" bare>
          <Maximize size={15} aria-hidden="true" />
        </CommandButton>
        <CommandButton id="view.selection" bare>
          <Locate size={15} aria-hidden="true" />
        </CommandButton>
      </div>
      {frame !== null && <ScaleBar frame={frame} system={system} caption={caption} />}
    </section>
  );
}

type FrameProps = { readonly frame: MapFrame; readonly system: 'us' | 'metric' };

/** Ruled ground: thin lines at a usual distance, stronger ones at every fifth. */
function Grid({ frame, system }: FrameProps) {
  const { px } = roundStep(metresPerPixel(frame.latitude, frame.zoom), 34, system);
  // The anchor may be half a world away; the rest of its distance is all that matters, and is drawn exactly.
  const [x, y] = [frame.anchorX % (px * 5), frame.anchorY % (px * 5)];
  const position = { x, y, patternUnits: 'userSpaceOnUse' as const };
  return (
    <svg className="map-grid" aria-hidden="true">
      <defs>
        <pattern id="ground-thin" width={px} height={px} {...position}>
          <path className="ground-line" d={`M0 .5H${px}M.5 0V${px}`} />
        </pattern>
        <pattern id="ground-strong" width={px * 5} height={px * 5} {...position}>
          <path className="ground-line ground-line-strong" d={`M0 .5H${px * 5}M.5 0V${px * 5}`} />
        </pattern>
      </defs>
      <rect width="100%" height="100%" fill="url(#ground-thin)" />
      <rect width="100%" height="100%" fill="url(#ground-strong)" />
    </svg>
  );
}

function ScaleBar({ frame, system, caption }: FrameProps & { readonly caption: string }) {
  const { words, px } = roundStep(metresPerPixel(frame.latitude, frame.zoom), 64, system);
  return (
    <div className="scale-plate">
      <svg width={px + 2} height={7} aria-hidden="true">
        <path d={`M1 0V6H${px + 1}V0`} />
      </svg>
      <span>{words}</span>
      <span className="quiet">{caption}</span>
      <span className="north" role="img" aria-label={mapWords.panel.northIsUp}>
        {mapWords.panel.north}
      </span>
    </div>
  );
}
