import { expect, test } from 'vitest';
import { exchangeAt, layTable, leaveSeat, portsOf } from '../../../../electron/services/jobs/exchange.ts';

const offer = (cost: number, absent: readonly number[] = []) => ({ routes: [], absent, cost });

test('every thread has a way to every other one', () => {
  const seats = layTable(3);
  expect(seats.map((seat) => portsOf(seat).length)).toEqual([2, 2, 2]);
  for (const seat of seats) expect(seat.ports[seat.number]).toBeNull();
  for (const seat of seats) for (const port of seat.ports) port?.close();
});

test('what the others posted is taken where it is better, and nobody waits for one that has left', () => {
  const seats = layTable(3);
  const [one, two, three] = seats.map((seat) => exchangeAt(seat, () => false));
  // Nobody can wait in one thread: the first two leave once they have posted.
  const [first, second] = seats;
  if (first === undefined || second === undefined) throw new Error('no seats');
  const posting = exchangeAt(first, () => true);
  expect(posting.meet(offer(7, [4]))).toBeNull();
  expect(exchangeAt(second, () => true).meet(offer(9))).toEqual(null);
  leaveSeat(first);
  two?.leave();
  // Fewer left out comes first.
  expect(three?.meet(offer(8, [1]))).toEqual(offer(9));
  // They have nothing to say at a second meeting.
  expect(three?.meet(offer(100))).toBeNull();
  one?.leave();
  for (const seat of seats) for (const port of seat.ports) port?.close();
});

test('a thread that is told to stop waits for nobody', () => {
  const seats = layTable(2);
  const [first] = seats;
  if (first === undefined) throw new Error('no seats');
  let looks = 0;
  const exchange = exchangeAt(first, () => {
    looks += 1;
    return looks > 2;
  });
  expect(exchange.meet(offer(5))).toBeNull();
  expect(looks).toBe(3);
  for (const seat of seats) for (const port of seat.ports) port?.close();
});
