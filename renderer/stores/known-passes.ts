import { useEffect, useMemo, useRef } from 'react';
import { create } from 'zustand';
import type { AppError } from '../../core/base/index.ts';
import type { Property } from '../../core/book/index.ts';
import { treatableGround } from '../../core/measure/index.ts';
import { keepFigures, knownPassesWith, type PassesOf } from '../../core/passes/index.ts';
import { useBook } from './book.ts';
import { callHost } from './host.ts';

/** Goes up whenever the host has sent figures of passes. */
const useArrivals = create<{ readonly count: number; readonly fault: AppError | null }>(() => ({
  count: 0,
  fault: null,
}));

/** After an edit the host has it a moment later than the screen, ms. */
const WAIT_MS = 150;

/** Something that is worked out from passes; what was found last for the same question stays until it is known again. */
export type WithPasses<Found> = {
  readonly found: Found | null;
  readonly isReckoning: boolean;
  /** Why the host could not reckon; null where it could. */
  readonly fault: AppError | null;
};

/**
 * Works something out from the passes over a property that are known, and asks the host for those that are not: reckoning them takes too
 * long for the thread that draws.
 * @param property null where nothing is to be found
 * @param question names what is asked: what was found for another question is not shown meanwhile
 * @param find the same function for as long as its answer is the same
 */
export function useWithPasses<Found>(
  property: Property | null,
  question: string,
  find: (passes: PassesOf) => Found,
): WithPasses<Found> {
  const { count, fault } = useArrivals();
  const session = useBook((state) => state.open?.session ?? null);
  const revision = useBook((state) => state.open?.revision ?? 0);
  const last = useRef<{ readonly question: string; readonly found: Found } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: with every arrival more passes are known.
  const now = useMemo(() => {
    const known = knownPassesWith(treatableGround);
    const found = find(known.passes);
    return { found, isComplete: known.isComplete() };
  }, [find, count]);
  const propertyId = property?.id ?? '';
  if (now.isComplete) last.current = { question, found: now.found };
  const isReckoning = !now.isComplete;
  // biome-ignore lint/correctness/useExhaustiveDependencies: lawn, question and revision stand for what the host knows.
  useEffect(() => {
    if (!isReckoning || session === null || propertyId === '') return undefined;
    const timer = setTimeout(() => void reckon(session, propertyId), WAIT_MS);
    return () => clearTimeout(timer);
  }, [isReckoning, session, propertyId, revision, property, find]);
  const found = last.current?.question === question ? last.current.found : null;
  return { found, isReckoning, fault: isReckoning ? fault : null };
}

async function reckon(session: string, propertyId: string): Promise<void> {
  const answer = await callHost('passes.reckon', { session, propertyId });
  if (answer.ok) keepFigures(answer.value.figures);
  useArrivals.setState(({ count }) => ({ count: count + 1, fault: answer.ok ? null : answer.error }));
}
