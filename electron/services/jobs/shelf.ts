/** Plans that a board can go back to. */
const MOST_KEPT = 60;

/** Things by their stamps; the oldest go when there are too many. */
export class Shelf<Thing> {
  private readonly things = new Map<string, Thing>();

  get(stamp: string): Thing | undefined {
    return this.things.get(stamp);
  }

  put(stamp: string, thing: Thing): void {
    this.things.delete(stamp);
    this.things.set(stamp, thing);
    for (const oldest of this.things.keys()) {
      if (this.things.size <= MOST_KEPT) break;
      this.things.delete(oldest);
    }
  }
}
