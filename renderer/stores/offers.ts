import { create } from 'zustand';

/** What a part of the screen can do for a command while it is there. */
export type Offer = {
  /** Why it cannot be done now; null where it can. */
  readonly whyNot: string | null;
  readonly run: () => void;
  /** Words for just this part, such as "Add a machine"; left out: the command's own. */
  readonly title?: string;
};

/** By the id of the command. Only what is on screen stands here. */
export const useOffers = create<Readonly<Record<string, Offer>>>(() => ({}));

/** Offers to do a command. Returns how the offer is taken back; a newer one of another part stays. */
export function offerCommand(id: string, offer: Offer): () => void {
  useOffers.setState({ [id]: offer });
  return () => {
    const { [id]: now, ...others } = useOffers.getState();
    if (now === offer) useOffers.setState(others, true);
  };
}
