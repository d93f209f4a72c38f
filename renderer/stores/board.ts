import { create } from 'zustand';
import type { BoardQuestion, BoardReply } from '../../core/contract/index.ts';
import { applyChange, type Breach, type StopMove } from '../../core/plan/board/index.ts';
import type { Outage } from '../../core/plan/problem/index.ts';
import { askedOf, type Plan } from '../../core/plan/result/index.ts';
import { todayHere } from '../format/index.ts';
import { storesWords } from '../texts/stores/index.ts';
import { askHost, callHost } from './host.ts';
import { say, showError } from './notices.ts';
import { type KnownPlan, startPlanning, usePlans } from './plans.ts';

type BoardState = {
  /** Plans of each round that can be gone back to, and those that were gone back from. */
  readonly past: Readonly<Record<string, readonly KnownPlan[]>>;
  readonly ahead: Readonly<Record<string, readonly KnownPlan[]>>;
  /** What a plan breaks, as far as it was asked. */
  readonly breaches: ReadonlyMap<Plan, readonly Breach[]>;
  /** Moves that are shown and not yet judged. */
  readonly waiting: readonly StopMove[];
  /** Why the last move was refused; '' for nothing. */
  readonly refused: string;
  /** Lawns that stay with their rig and day when the plan is improved, and whole days of rigs: "date rig". */
  readonly pinnedLawns: ReadonlySet<string>;
  readonly pinnedDays: ReadonlySet<string>;
};

const NOTHING: BoardState = {
  past: {},
  ahead: {},
  breaches: new Map(),
  waiting: [],
  refused: '',
  pinnedLawns: new Set(),
  pinnedDays: new Set(),
};
/** Plans that can be gone back to. */
const MOST_PAST = 50;

/** A plan that is changed by hand. */
export const useBoard = create<BoardState>(() => NOTHING);

const stamps = new WeakMap<Plan, string>();
/** The plan whose change this store itself puts into the list of plans. */
let own: Plan | null = null;

usePlans.subscribe((now, before) => {
  if (now.session !== before.session) {
    useBoard.setState(NOTHING);
    return;
  }
  for (const [roundId, known] of Object.entries(now.plans)) {
    const old = before.plans[roundId];
    if (old === undefined || old === known || known.plan === own) continue;
    remember(roundId, old);
  }
});

function remember(name: string, old: KnownPlan): void {
  useBoard.setState(({ past, ahead }) => ({
    past: { ...past, [name]: [...(past[name] ?? []), old].slice(-MOST_PAST) },
    ahead: { ...ahead, [name]: [] },
  }));
}

function show(name: string, known: KnownPlan): void {
  own = known.plan;
  usePlans.setState(({ plans }) => ({ plans: { ...plans, [name]: known } }));
  own = null;
}

function stampOf(plan: Plan): string {
  const known = stamps.get(plan) ?? crypto.randomUUID();
  stamps.set(plan, known);
  return known;
}

/** Asks the host about a plan. The plan itself goes along only where the host does not know it. */
export async function askBoard(plan: Plan, question: BoardQuestion): Promise<BoardReply | null> {
  const { session } = usePlans.getState();
  if (session === null) return null;
  const asked = { session, roundId: plan.roundId, today: todayHere(), stamp: stampOf(plan) };
  type Request = Parameters<typeof askHost<'board.ask'>>[1];
  const first = await askHost('board.ask', { ...asked, plan: null, question } as Request);
  if (first?.kind !== 'plan-unknown') return first;
  return askHost('board.ask', { ...asked, plan, question } as Request);
}

/** One move after the other: each is about the plan that the one before has made. */
let queue: Promise<void> = Promise.resolve();

/** Moves stops of the plan that is shown; the figures come a moment later. */
export function moveStops(name: string, moves: readonly StopMove[]): Promise<void> {
  useBoard.setState(({ waiting }) => ({ waiting: [...waiting, ...moves], refused: '' }));
  queue = queue.then(() => moveNow(name, moves));
  return queue;
}

async function moveNow(name: string, moves: readonly StopMove[]): Promise<void> {
  const known = usePlans.getState().plans[name];
  const newStamp = crypto.randomUUID();
  const reply =
    known === undefined ? null : await askBoard(known.plan, { kind: 'move', moves, newStamp }).catch(() => null);
  useBoard.setState(({ waiting }) => ({ waiting: waiting.filter((each) => !moves.includes(each)) }));
  if (known === undefined || reply === null) return;
  if (reply.kind === 'refused') {
    const refused = reply.refusals.map((each) => each.words).join('. ');
    useBoard.setState({ refused });
    say(storesWords.board.notMoved(refused));
    return;
  }
  if (reply.kind !== 'moved') return;
  const shown = usePlans.getState().plans[name];
  if (shown !== known) {
    await dropMove(name, shown);
    return;
  }
  const plan = applyChange(known.plan, reply.change);
  stamps.set(plan, newStamp);
  note(plan, reply.breaches);
  remember(name, known);
  show(name, { ...known, plan, savedAt: new Date().toISOString() });
  say(
    reply.breaches.length === 0 ? storesWords.board.nothingBroken : reply.breaches.map((each) => each.words).join('. '),
  );
}

/** A plan that was made meanwhile is not overwritten by a change of the one before; the host has stored that change, so it is told again. */
async function dropMove(name: string, shown: KnownPlan | undefined): Promise<void> {
  if (shown === undefined) return;
  say(storesWords.board.overtaken);
  await keep(name, shown.plan);
}

function note(plan: Plan, breaches: readonly Breach[]): void {
  useBoard.setState((state) => ({
    breaches: new Map([...state.breaches, [plan, breaches] as const].slice(-MOST_PAST)),
  }));
}

/** Finds out what the plan breaks that is shown; once for each plan. */
export async function judgeShown(plan: Plan): Promise<void> {
  if (useBoard.getState().breaches.has(plan)) return;
  const reply = await askBoard(plan, { kind: 'breaches' });
  if (reply?.kind === 'breaches') note(plan, reply.breaches);
}

/** Goes back to the plan before the last change, or forward again. */
export function stepPlan(name: string, way: 'back' | 'ahead'): void {
  const { past, ahead, waiting } = useBoard.getState();
  const from = (way === 'back' ? past : ahead)[name] ?? [];
  const to = (way === 'back' ? ahead : past)[name] ?? [];
  const target = from.at(-1);
  const current = usePlans.getState().plans[name];
  if (target === undefined || current === undefined || waiting.length > 0) return;
  const left = { [name]: from.slice(0, -1) };
  const grown = { [name]: [...to, current] };
  useBoard.setState(
    way === 'back'
      ? { past: { ...past, ...left }, ahead: { ...ahead, ...grown }, refused: '' }
      : { ahead: { ...ahead, ...left }, past: { ...past, ...grown }, refused: '' },
  );
  show(name, target);
  say(way === 'back' ? storesWords.board.takenBack : storesWords.board.madeAgain);
  queue = queue.then(() => keep(name, target.plan));
}

async function keep(name: string, plan: Plan): Promise<void> {
  const { session } = usePlans.getState();
  if (session === null) return;
  const kept = await callHost('board.keep', { session, roundId: plan.roundId, stamp: stampOf(plan) });
  if (kept.ok && kept.value.known) return;
  const stored = await callHost('plan.store', { session, roundId: name, plan } as Parameters<
    typeof callHost<'plan.store'>
  >[1]);
  if (!stored.ok && stored.error.code !== 'book-read-only') showError(stored.error);
}

export function dayKeyOf(date: string, rigId: string): string {
  return `${date} ${rigId}`;
}

export function pinLawn(propertyId: string, pinned: boolean): void {
  useBoard.setState(({ pinnedLawns }) => ({ pinnedLawns: withMember(pinnedLawns, propertyId, pinned) }));
}

export function pinDay(date: string, rigId: string, pinned: boolean): void {
  useBoard.setState(({ pinnedDays }) => ({ pinnedDays: withMember(pinnedDays, dayKeyOf(date, rigId), pinned) }));
}

function withMember(set: ReadonlySet<string>, member: string, wanted: boolean): ReadonlySet<string> {
  const others = [...set].filter((each) => each !== member);
  return new Set(wanted ? [...others, member] : others);
}

type RestWish = NonNullable<Parameters<typeof startPlanning>[0]['rest']>;

/**
 * Plans again from what is shown: what is pinned stays with its rig and day, what was taken out stays out, and so do rigs and machines
 * that are out of order: those of the plan unless others are given.
 */
export async function improveFromHere(name: string, seconds: number, outages?: readonly Outage[]): Promise<void> {
  await queue;
  const plan = usePlans.getState().plans[name]?.plan;
  if (plan === undefined) return;
  const { pinnedLawns, pinnedDays } = useBoard.getState();
  const asked = askedOf(plan);
  const inDays = plan.days
    .filter((day) => pinnedDays.has(dayKeyOf(day.date, day.rigId)))
    .flatMap((day) => day.stops.map((stop) => stop.propertyId));
  await startPlanning({
    roundId: plan.roundId,
    seconds,
    seed: plan.seed,
    evenUsdPerHour: asked.evenUsdPerHour,
    pinned: [...new Set([...pinnedLawns, ...inDays])],
    outages: outages ?? asked.outages,
    done: asked.done,
    ...(plan.rest === undefined ? {} : { rest: structuredClone(plan.rest) as RestWish }),
  });
}
