import { useEffect, useLayoutEffect, useRef, useSyncExternalStore } from 'react';
import {
  type Offer,
  offerCommand,
  refuse,
  useBoard,
  useBook,
  useCarry,
  useDraft,
  useHost,
  useOffers,
  useParts,
  usePasses,
  usePlans,
  useRoads,
  useSelection,
  useView,
} from '../stores/index.ts';
import type { Command } from './command.ts';
import { commandNamed } from './registry.ts';

/** Everything that titles and reasons of commands are made of. */
const SOURCES = [
  useBoard,
  useBook,
  useCarry,
  useDraft,
  useHost,
  useOffers,
  useParts,
  usePasses,
  usePlans,
  useRoads,
  useSelection,
  useView,
] as const;

function subscribe(listener: () => void): () => void {
  const stops = SOURCES.map((source) => source.subscribe(listener));
  return () => {
    for (const stop of stops) stop();
  };
}

/** How a command stands now. */
export type CommandNow = {
  readonly command: Command;
  readonly title: string;
  /** Why it cannot be done; null where it can. */
  readonly whyNot: string | null;
  readonly isOn: boolean | null;
};

/** How a command stands, followed as that changes. */
export function useCommand(id: string): CommandNow {
  const command = commandNamed(id);
  // As text, so that what is the same is not drawn again.
  const text = useSyncExternalStore(subscribe, () =>
    JSON.stringify([command.title(), command.whyNot(), command.isOn()]),
  );
  const [title, whyNot, isOn] = JSON.parse(text) as readonly [string, string | null, boolean | null];
  return { command, title, whyNot, isOn };
}

/** Runs a command, or says why it cannot be done. */
export function runCommand(command: Command): void {
  const reason = command.whyNot();
  if (reason === null) command.run();
  else refuse(`${command.title()}: ${reason}`);
}

/** Offers to do a command for as long as a part of the screen is there. */
export function useOffer(id: string, { whyNot, title, run }: Offer): void {
  const runNow = useRef(run);
  useLayoutEffect(() => {
    runNow.current = run;
  });
  useEffect(
    () => offerCommand(id, { whyNot, run: () => runNow.current(), ...(title === undefined ? {} : { title }) }),
    [id, whyNot, title],
  );
}
