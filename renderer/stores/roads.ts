import { create } from 'zustand';
import { ok, type Result } from '../../core/base/index.ts';
import { type BookRoads, PLAIN_ROADS } from '../../core/book/index.ts';
import type { RoadsFile, RoadsProgress, RoadsStatus } from '../../core/contract/index.ts';
import type { Learnt } from '../../core/travel/by-road/index.ts';
import { todayHere } from '../format/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { edit, useBook } from './book.ts';
import { pickFile } from './files.ts';
import { askHost, callHost, changeSettings, useHost } from './host.ts';
import { showError, showNews } from './notices.ts';

type RoadsState = {
  /** Where drive times come from; null while that is not known. */
  readonly status: RoadsStatus | null;
  readonly importing: {
    readonly fileName: string;
    readonly progress: Pick<RoadsProgress, 'step' | 'done' | 'total'> | null;
  } | null;
  /** What the drives that were written down teach; null where nobody has asked. */
  readonly learnt: Learnt | null;
};

const NOTHING: RoadsState = { status: null, importing: null, learnt: null };

/** The roads beside the open book. */
export const useRoads = create<RoadsState>(() => NOTHING);

let asked = 0;

/** Asks the host what roads there are and how many pairs of places they join. Only the newest answer counts. */
export async function loadRoads(): Promise<void> {
  const session = useBook.getState().open?.session;
  if (session === undefined) return;
  asked += 1;
  const own = asked;
  const answer = await callHost('roads.status', { session });
  if (own !== asked || useBook.getState().open?.session !== session) return;
  if (answer.ok) useRoads.setState({ status: answer.value });
  else showError(answer.error);
}

/** Lets go of what is known of another book's roads. */
export function forgetRoadsStatus(): void {
  asked += 1;
  useRoads.setState(NOTHING);
}

/** Changes how roads are driven, as one step. */
export function changeRoads(changes: Partial<BookRoads>, label: string): Result<unknown> {
  const { open } = useBook.getState();
  if (open === null) return ok(true);
  const roads = { ...PLAIN_ROADS, ...open.book.roads, ...changes };
  const done = edit({ kind: 'set', changes: { roads }, label });
  if (!done.ok) showError(done.error);
  return done;
}

/** Has an extract chosen and imported beside the book. */
export async function importRoads(): Promise<void> {
  const session = useBook.getState().open?.session;
  const picked = session === undefined ? null : await pickFile('roads');
  if (session === undefined || picked === null) return;
  useRoads.setState({ importing: { fileName: picked.name, progress: null } });
  const made = await callHost('roads.import', { session, token: picked.token });
  useRoads.setState({ importing: null });
  if (!made.ok) {
    if (made.error.code !== 'cancelled') showError(made.error);
  } else if (useBook.getState().open?.session === session) {
    changeRoads({ use: true, extract: extractOf(picked.name, made.value) }, storesWords.roads.import(picked.name));
    showNews(storesWords.roads.imported(picked.name));
  }
  await loadRoads();
}

function extractOf(name: string, { about, fingerprint }: RoadsFile): NonNullable<BookRoads['extract']> {
  const { attribution, licence, dataOf, bounds, counts } = about;
  return {
    name: name.slice(0, 200),
    attribution,
    licence,
    hash: fingerprint,
    importedOn: todayHere(),
    ...(dataOf === '' ? {} : { dataOf }),
    roads: counts.roads,
    bounds: [...bounds] as unknown as NonNullable<BookRoads['extract']>['bounds'],
  };
}

export function roadsProgress({ session, step, done, total }: RoadsProgress): void {
  const { importing } = useRoads.getState();
  if (importing === null || useBook.getState().open?.session !== session) return;
  useRoads.setState({ importing: { ...importing, progress: { step, done, total } } });
}

export function cancelRoadImport(): void {
  const session = useBook.getState().open?.session;
  if (session !== undefined) callHost('roads.cancel', { session }).catch(() => undefined);
}

/** Removes the road file; how roads are driven stays in the book. */
export async function forgetRoads(): Promise<void> {
  const { open } = useBook.getState();
  if (open === null) return;
  const done = await askHost('roads.forget', { session: open.session });
  if (done === null) return;
  if (open.book.roads?.extract !== undefined) {
    const { extract: _, ...rest } = open.book.roads;
    const changed = edit({ kind: 'set', changes: { roads: rest }, label: storesWords.roads.removeTheRoads });
    if (!changed.ok) showError(changed.error);
  }
  useRoads.setState({ learnt: null });
  await loadRoads();
}

/** Looks what the drives of the book's visits teach. Nothing is changed yet. */
export async function learnRoads(): Promise<void> {
  const session = useBook.getState().open?.session;
  if (session === undefined) return;
  const learnt = await askHost('roads.learn', { session });
  if (learnt !== null) useRoads.setState({ learnt });
}

/** Takes over what was learned: plans reckon with it from now on. */
export function takeLearned({ classes }: Learnt): void {
  const factors = classes
    .filter((each) => each.isUsed)
    .map(({ roadClass, trips, timeFactor }) => ({
      roadClass,
      trips,
      timeFactor: Math.round(timeFactor * 1000) / 1000,
    }));
  const done = changeRoads({ learned: { use: true, on: todayHere(), factors } }, storesWords.roads.useLearned);
  if (done.ok) showNews(storesWords.roads.learnedUsed, true);
}

/** Names the table service to ask; nothing is asked of any machine before. */
export async function setRoadEngine(kind: 'none' | 'osrm' | 'valhalla', address: string): Promise<void> {
  await changeSettings({ roadEngine: { kind, address } });
  await loadRoads();
}

export function useRoadEngine(): { readonly kind: 'none' | 'osrm' | 'valhalla'; readonly address: string } {
  return useHost((state) => state.settings.roadEngine);
}
