import { useEffect } from 'react';
import { create } from 'zustand';
import type { AppError } from '../../core/base/index.ts';
import type { Machine, Property } from '../../core/book/index.ts';
import type { PassPicture } from '../../core/passes/index.ts';
import { useBook } from './book.ts';
import { drawPasses, type PassWish } from './pass-drawings.ts';

type PassesState = {
  /** Whether the passes are wanted on the map. */
  readonly isOn: boolean;
  /** What the picture is of; null where nothing is shown. */
  readonly shown: PassWish | null;
  readonly picture: PassPicture | null;
  readonly isLaying: boolean;
  readonly fault: AppError | null;
  /** The stretch of the way that is read, by its number along the way; null for none. */
  readonly leg: number | null;
};

const NOTHING = { shown: null, picture: null, isLaying: false, fault: null, leg: null } as const;

/** The passes that are looked at. The host lays them in a thread of its own. */
export const usePasses = create<PassesState>(() => ({ isOn: false, ...NOTHING }));

/** After an edit the host has it a moment later than the screen, ms. */
const WAIT_MS = 150;
let asked = 0;

export function showPasses(isOn: boolean): void {
  usePasses.setState(isOn ? { isOn } : { isOn, ...NOTHING });
}

export function readLeg(leg: number | null): void {
  usePasses.setState({ leg });
}

/** Asks for the passes of a wish for as long as there is one on screen, and anew when lawn, machine or the book at the host change. */
export function useLaidPasses(wish: PassWish | null): void {
  useEffect(() => () => usePasses.setState(NOTHING), []);
  const isOn = usePasses((state) => state.isOn);
  const session = useBook((state) => state.open?.session ?? null);
  const revision = useBook((state) => state.open?.revision ?? 0);
  const property = useBook((state) => find(state.open?.book.properties, wish?.propertyId));
  const machine = useBook((state) => find(state.open?.book.machines, wish?.machineId));
  const key = wish === null ? null : JSON.stringify(wish);
  // biome-ignore lint/correctness/useExhaustiveDependencies: lawn, machine and revision stand for what the host knows.
  useEffect(() => {
    asked += 1;
    if (!isOn || session === null || key === null) {
      usePasses.setState(NOTHING);
      return undefined;
    }
    const timer = setTimeout(() => void lay(session, JSON.parse(key) as PassWish), WAIT_MS);
    return () => clearTimeout(timer);
  }, [isOn, session, key, revision, property, machine]);
}

function find<Part extends Property | Machine>(
  parts: readonly Part[] | undefined,
  id: string | undefined,
): Part | null {
  return parts?.find((each) => each.id === id) ?? null;
}

async function lay(session: string, wish: PassWish): Promise<void> {
  asked += 1;
  const mine = asked;
  usePasses.setState({ isLaying: true });
  const [answer] = await drawPasses(session, [wish]);
  if (mine !== asked || answer === undefined) return;
  const { shown, leg } = usePasses.getState();
  const isSame = JSON.stringify(shown) === JSON.stringify(wish);
  if (!answer.ok) usePasses.setState({ ...NOTHING, shown: wish, fault: answer.error });
  else {
    const picture = answer.value;
    const kept = isSame && leg !== null && leg < (picture?.legs.length ?? 0) ? leg : null;
    usePasses.setState({ shown: wish, picture, isLaying: false, fault: null, leg: kept });
  }
}
