import { create } from 'zustand';

/** The rooms in the order of the pipeline. */
export const ROOMS = ['ground', 'shed', 'round', 'day', 'paper'] as const;
export type Room = (typeof ROOMS)[number];

export const PANELS = ['left', 'right', 'bottom'] as const;
export type Panel = (typeof PANELS)[number];
export type PanelState = { readonly sizePx: number; readonly folded: boolean };

/** What is open above the rooms; null for nothing. */
export type Overlay = 'palette' | 'keys' | 'backups' | 'about' | null;

type ViewState = {
  readonly room: Room;
  readonly panels: Readonly<Record<Panel, PanelState>>;
  readonly overlay: Overlay;
  /** Counts the wishes to see the selection on the map. */
  readonly zoomToSelection: number;
  readonly zoomToAll: number;
  readonly ribbonAsTable: boolean;
  /** Which view of a room is shown, by room; a room that is not named shows its first one. */
  readonly views: Readonly<Partial<Record<Room, string>>>;
};

const LIMITS: Readonly<Record<Panel, readonly [number, number]>> = {
  left: [220, 520],
  right: [240, 560],
  bottom: [150, 520],
};
const FIRST_PANELS: ViewState['panels'] = {
  left: { sizePx: 300, folded: false },
  right: { sizePx: 316, folded: false },
  bottom: { sizePx: 300, folded: false },
};
const KEY = 'swardway.panels';

export const useView = create<ViewState>(() => ({
  room: 'ground',
  panels: FIRST_PANELS,
  overlay: null,
  zoomToSelection: 0,
  zoomToAll: 0,
  ribbonAsTable: false,
  views: {},
}));

export function goTo(room: Room): void {
  useView.setState({ room });
}

/** Shows one of the views of a room, now or when somebody goes there. */
export function showView(room: Room, view: string): void {
  useView.setState(({ views }) => ({ views: { ...views, [room]: view } }));
}

export function openOverlay(overlay: Overlay): void {
  useView.setState({ overlay });
}

/** Sizes a panel, within what can be read and what leaves room for the map. */
export function sizePanel(panel: Panel, sizePx: number): void {
  const [least, most] = LIMITS[panel];
  changePanel(panel, { sizePx: Math.round(Math.min(most, Math.max(least, sizePx))), folded: false });
}

export function foldPanel(panel: Panel, folded: boolean): void {
  changePanel(panel, { folded });
}

export function panelLimits(panel: Panel): readonly [number, number] {
  return LIMITS[panel];
}

function changePanel(panel: Panel, change: Partial<PanelState>): void {
  useView.setState(({ panels }) => ({ panels: { ...panels, [panel]: { ...panels[panel], ...change } } }));
  rememberPanels();
}

export function showSelectionOnMap(): void {
  useView.setState(({ zoomToSelection }) => ({ zoomToSelection: zoomToSelection + 1 }));
}

export function showAllOnMap(): void {
  useView.setState(({ zoomToAll }) => ({ zoomToAll: zoomToAll + 1 }));
}

function rememberPanels(): void {
  try {
    window.localStorage.setItem(KEY, JSON.stringify(useView.getState().panels));
  } catch {
    // A browser that keeps nothing: the panels start at their usual size next time.
  }
}

/** Puts the panels back where they were; anything unreadable is left out. */
export function restorePanels(): void {
  let stored: unknown;
  try {
    stored = JSON.parse(window.localStorage.getItem(KEY) ?? 'null');
  } catch {
    return;
  }
  if (typeof stored !== 'object' || stored === null) return;
  for (const panel of PANELS) {
    const state = (stored as Partial<Record<Panel, Partial<PanelState>>>)[panel];
    if (typeof state?.sizePx !== 'number') continue;
    sizePanel(panel, state.sizePx);
    if (state.folded === true) foldPanel(panel, true);
  }
}
