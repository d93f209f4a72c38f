import { MessageChannel, type MessagePort, receiveMessageOnPort, type TransferListItem } from 'node:worker_threads';
import { type Exchange, isBetter, type Offer } from '../../../core/plan/search/index.ts';

/** The place of one of several planning threads at their common table. */
export type Seat = {
  readonly number: number;
  /** [thread]: how many meetings it has come to; LEFT once it comes to none any more. 32-bit numbers that all threads see. */
  readonly meetings: SharedArrayBuffer;
  /** [thread]: the way to it; null to oneself. */
  readonly ports: readonly (MessagePort | null)[];
};

type Message = { readonly meeting: number; readonly offer: Offer };

const LEFT = 2 ** 31 - 1;
/** How long a thread sleeps before it looks whether it was told to stop. */
const NAP_MS = 50;

/** Seats for so many threads. */
export function layTable(threads: number): readonly Seat[] {
  const meetings = new SharedArrayBuffer(threads * Int32Array.BYTES_PER_ELEMENT);
  const ports: (MessagePort | null)[][] = Array.from({ length: threads }, () =>
    Array.from({ length: threads }, () => null),
  );
  for (let one = 0; one < threads; one += 1) {
    for (let other = one + 1; other < threads; other += 1) {
      const { port1, port2 } = new MessageChannel();
      (ports[one] as (MessagePort | null)[])[other] = port1;
      (ports[other] as (MessagePort | null)[])[one] = port2;
    }
  }
  return ports.map((own, number) => ({ number, meetings, ports: own }));
}

/** What has to be handed over with a seat. */
export function portsOf({ ports }: Seat): readonly TransferListItem[] {
  return ports.filter((port) => port !== null);
}

/** The others need not wait for this seat any more: its thread has ended, whether by itself or by force. */
export function leaveSeat({ number, meetings }: Seat): void {
  const counts = new Int32Array(meetings);
  Atomics.store(counts, number, LEFT);
  Atomics.notify(counts, number);
}

/**
 * The exchange of a thread with the others: each posts its best routes to all others, then sleeps until they have come as far.
 *
 * @param stopped whether the thread has been told to stop; then it waits for nobody
 */
export function exchangeAt(seat: Seat, stopped: () => boolean): Exchange {
  const { number, meetings, ports } = seat;
  const counts = new Int32Array(meetings);
  let meeting = 0;
  const meet = (own: Offer): Offer | null => {
    meeting += 1;
    const message: Message = { meeting, offer: { routes: own.routes, absent: own.absent, cost: own.cost } };
    for (const port of ports) port?.postMessage(message);
    Atomics.store(counts, number, meeting);
    Atomics.notify(counts, number);
    const offers = ports.map((port, other) => {
      if (port === null) return own;
      return waitFor(counts, other, meeting, stopped) ? takeOffer(port, meeting) : null;
    });
    const best = offers.reduce((least, each) =>
      each !== null && (least === null || isBetter(each, least)) ? each : least,
    );
    return best === own ? null : best;
  };
  return { meet, leave: () => leaveSeat(seat) };
}

/** Sleeps until the other thread has come to a meeting or has left; false where there is no more waiting. */
function waitFor(counts: Int32Array, other: number, meeting: number, stopped: () => boolean): boolean {
  for (;;) {
    const seen = Atomics.load(counts, other);
    if (seen >= meeting) return true;
    if (stopped()) return false;
    Atomics.wait(counts, other, seen, NAP_MS);
  }
}

/** What was posted for a meeting; null where the other one left before it. */
function takeOffer(port: MessagePort, meeting: number): Offer | null {
  for (;;) {
    const received = receiveMessageOnPort(port) as { readonly message: Message } | undefined;
    if (received === undefined) return null;
    if (received.message.meeting === meeting) return received.message.offer;
  }
}
