import type { Book } from '../book/index.ts';

/** The book with a round worked by the rigs of a fleet instead of its own; the same book where it has no such round or fleet. */
export function bookOfFleet(book: Book, roundId: string, fleetId: string): Book {
  const fleet = book.fleets.find((each) => each.id === fleetId);
  if (fleet === undefined) return book;
  const rounds = book.rounds.map((round) => (round.id === roundId ? { ...round, rigIds: fleet.rigIds } : round));
  return { ...book, rounds };
}

/** The name by which the plan of a round by a fleet is kept beside that of the round. */
export function fleetPlanName(roundId: string, fleetId: string): string {
  return `${roundId} by fleet ${fleetId}`;
}
