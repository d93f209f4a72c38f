import { create } from 'zustand';
import { err, ok, type Result } from '../../core/base/index.ts';
import type { Position } from '../../core/book/index.ts';
import { applyDraft, type Draft, type DraftStep, readDraft, redoDraft, undoDraft } from '../../core/sketch/index.ts';
import { draftsWords } from '../texts/stores/index.ts';
import { callHost } from './host.ts';
import { say, showError } from './notices.ts';

/** Whether the newest step is on the disk. */
export type DraftKept = 'kept' | 'keeping' | 'failed';

type DraftState = {
  readonly draft: Draft | null;
  /** Outlines that were set aside unfinished, newest first. They are kept with the book too. */
  readonly aside: readonly Draft[];
  /** The draft was found with the book when it was opened; the user has not yet gone on with it. */
  readonly found: boolean;
  /** Asks whether the draft is to be thrown away. */
  readonly asking: boolean;
  /** Corners while one of them is dragged. */
  readonly dragging: readonly Position[] | null;
  /** Corner that is marked in table and map. */
  readonly marked: number | null;
  readonly kept: DraftKept;
  /** Where the crosshair is wanted; a larger count asks anew, 0 asks nothing. */
  readonly pointing: { readonly count: number; readonly at: Position | null };
  /** Corners that were typed and should be seen whole on the map. */
  readonly inView: readonly Position[] | null;
};

const NOTHING: DraftState = {
  draft: null,
  aside: [],
  found: false,
  asking: false,
  dragging: null,
  marked: null,
  kept: 'kept',
  pointing: { count: 0, at: null },
  inView: null,
};

/** What is being drawn. It lives here and with the book, whatever room or tool is chosen. */
export const useDraft = create<DraftState>(() => NOTHING);

/** Steps kept to be taken back when a draft is stored. */
const MOST_STORED_STEPS = 400;
/** From so many corners on, throwing away asks. */
const PRECIOUS_CORNERS = 3;

let session: string | null = null;
let waiting: string | null | undefined;
let sending = false;

/** Takes over what a freshly opened book keeps; null closes. */
export function startDrafts(newSession: string | null, text: string | null): void {
  session = newSession;
  waiting = undefined;
  const read = readStored(text);
  if (!read.ok) {
    useDraft.setState(NOTHING);
    showError(read.error);
    return;
  }
  const { open, aside } = read.value;
  useDraft.setState({ ...NOTHING, draft: open, aside, found: open !== null });
  if (open !== null) say(draftsWords.draft.found);
}

type Stored = { readonly open: Draft | null; readonly aside: readonly Draft[] };

function readStored(text: string | null): Result<Stored> {
  if (text === null) return ok({ open: null, aside: [] });
  let value: { readonly open?: unknown; readonly aside?: unknown };
  try {
    value = JSON.parse(text) as typeof value;
  } catch {
    return unreadable();
  }
  const open = value.open == null ? ok(null) : readDraft(value.open);
  if (!open.ok) return open;
  const aside: Draft[] = [];
  for (const each of Array.isArray(value.aside) ? value.aside : []) {
    const read = readDraft(each);
    if (!read.ok) return read;
    aside.push(read.value);
  }
  return ok({ open: open.value, aside });
}

function unreadable(): Result<never> {
  return err('format-invalid', 'draft', draftsWords.draft.unreadable, draftsWords.draft.unreadableAdvice);
}

/** The text that is kept with the book; null where nothing is unfinished. */
export function storedText({ draft, aside }: Pick<DraftState, 'draft' | 'aside'>): string | null {
  if (draft === null && aside.length === 0) return null;
  return JSON.stringify({ version: 1, open: draft === null ? null : shortened(draft), aside: aside.map(shortened) });
}

function shortened(draft: Draft): Draft {
  const { undo, redo } = draft;
  return { ...draft, undo: undo.slice(-MOST_STORED_STEPS), redo: redo.slice(-MOST_STORED_STEPS) };
}

/** Changes what is drawn, and keeps it. */
export function changeDraft(change: Partial<DraftState>): void {
  const pointing = change.draft === null ? { pointing: { count: 0, at: null } } : {};
  useDraft.setState({ found: false, asking: false, ...pointing, ...change });
  keep();
}

function keep(): void {
  waiting = storedText(useDraft.getState());
  sendWaiting().catch(() => undefined);
}

/** One request at a time; of those that wait only the newest is sent. */
async function sendWaiting(): Promise<void> {
  if (sending) return;
  sending = true;
  while (waiting !== undefined && session !== null) {
    const text = waiting;
    const asked = session;
    waiting = undefined;
    useDraft.setState({ kept: 'keeping' });
    const answer = await callHost('draft.save', { session: asked, draft: text });
    if (asked !== session) continue;
    if (answer.ok) {
      useDraft.setState({ kept: 'kept' });
      continue;
    }
    if (useDraft.getState().kept !== 'failed') showError(answer.error);
    useDraft.setState({ kept: 'failed' });
    break;
  }
  sending = false;
}

/** One step of drawing. */
export function draftStep(step: DraftStep): void {
  const { draft } = useDraft.getState();
  if (draft !== null) changeDraft({ draft: applyDraft(draft, step), dragging: null });
}

/** Fewest corners that an outline of the book keeps. */
const FEWEST_CORNERS = 3;

/** A step that was typed: the map follows, so that what is typed is seen. */
export function typedStep(step: DraftStep): void {
  draftStep(step);
  useDraft.setState(({ draft }) => ({ inView: draft?.corners ?? null }));
}

/** Takes a corner out. An outline of the book keeps three: less would be deleting it. */
export function removeCorner(index: number): void {
  const { draft } = useDraft.getState();
  if (draft === null) return;
  if (draft.base !== undefined && draft.corners.length <= FEWEST_CORNERS) {
    say(draftsWords.draft.keepsThree);
    return;
  }
  draftStep({ kind: 'remove', index });
  markCorner(null);
  say(draftsWords.draft.cornerRemoved(index + 1));
}

/** Puts other members into the draft without a step: its name, its kind, how far it may be out. */
export function adjustDraft(change: Partial<Draft>): void {
  const { draft } = useDraft.getState();
  if (draft !== null) changeDraft({ draft: { ...draft, ...change } });
}

export function undoDraftStep(): void {
  const { draft } = useDraft.getState();
  if (draft !== null) changeDraft({ draft: undoDraft(draft), marked: null });
}

export function redoDraftStep(): void {
  const { draft } = useDraft.getState();
  if (draft !== null) changeDraft({ draft: redoDraft(draft), marked: null });
}

export function markCorner(marked: number | null): void {
  useDraft.setState({ marked });
}

export function dragDraft(dragging: readonly Position[] | null): void {
  useDraft.setState({ dragging });
}

/** Puts the crosshair at a place, or in the middle of the map, and the focus on the map. */
export function pointAtMap(at: Position | null): void {
  useDraft.setState(({ pointing }) => ({ pointing: { count: pointing.count + 1, at } }));
}

/** Waits until the newest step is with the book, or cannot be. */
export async function draftSettled(): Promise<void> {
  while (sending) await new Promise((done) => setTimeout(done, 5));
}

/** Goes on with what was found when the book was opened. */
export function goOnWithDraft(): void {
  useDraft.setState(({ draft }) => ({ found: false, inView: draft?.corners ?? null }));
}

/** Puts the draft away unfinished, for later. One without corners is not worth keeping. */
export function setDraftAside(): void {
  const { draft, aside } = useDraft.getState();
  if (draft === null) return;
  const worth = draft.base === undefined ? draft.corners.length > 0 : draft.undo.length > 0;
  changeDraft({ draft: null, marked: null, dragging: null, aside: worth ? [draft, ...aside] : aside });
  if (worth) say(draftsWords.draft.setAside);
}

/** Takes an outline that was set aside up again; one that is open meanwhile is set aside in turn. */
export function takeUpDraft(taken: Draft): void {
  setDraftAside();
  const { aside } = useDraft.getState();
  if (!aside.includes(taken)) return;
  const rest = aside.filter((each) => each !== taken);
  changeDraft({ draft: taken, aside: rest, marked: null, inView: taken.corners });
}

/** Throws the draft away; asks first where three or more corners would be lost. */
export function throwDraftAway(sure = false): void {
  const { draft } = useDraft.getState();
  if (draft === null) return;
  const precious = draft.base === undefined ? draft.corners.length >= PRECIOUS_CORNERS : draft.undo.length > 0;
  if (precious && !sure) {
    useDraft.setState({ asking: true });
    return;
  }
  changeDraft({ draft: null, marked: null, dragging: null });
  say(draftsWords.draft.thrownAway);
}

/** Esc: one level back. It never throws away: what has corners is set aside. */
export function stepOutOfDraft(): void {
  const { asking, marked, draft } = useDraft.getState();
  if (asking) useDraft.setState({ asking: false });
  else if (marked !== null) markCorner(null);
  else if (draft !== null) setDraftAside();
}
