import { useMemo } from 'react';
import type { Book, Round, Timing } from '../../../../core/book/index.ts';
import { lawnsBySite, type SiteGroup, type TimingSeason, timingSeason } from '../../../../core/round/timing/index.ts';
import { todayHere } from '../../../format/index.ts';
import { knownMeasure, useBook, useCurrentPlan, useCurrentRound, useMeasures } from '../../../stores/index.ts';
import { roundLawns } from './round-lawns.ts';

/** What the view shows: the round, its timing, and the lawns by kind of site held against their windows. */
export type When = {
  readonly book: Book;
  readonly round: Round;
  readonly today: string;
  readonly timing: Timing | null;
  readonly season: TimingSeason | null;
  readonly groups: readonly SiteGroup[];
};

export function useWhen(): When | null {
  const book = useBook((state) => state.open?.book ?? null);
  const round = useCurrentRound();
  const plan = useCurrentPlan()?.plan ?? null;
  const today = todayHere();
  const timing = book?.timings.find((each) => each.id === round?.timingId) ?? null;
  const temperatures = book?.temperatures;
  const reference = round?.dates[0] ?? today;
  const season = useMemo(
    () => (timing === null || temperatures === undefined ? null : timingSeason({ temperatures }, timing, reference)),
    [timing, temperatures, reference],
  );
  const isMeasured = useMeasures((state) => state.done >= state.total);
  const groups = useMemo(() => {
    if (season === null || book === null || round === null) return [];
    // A choice by area takes the lawns whose area is known; the others follow when everything is measured.
    const lawns = roundLawns(book, round, plan, (property) =>
      isMeasured ? (knownMeasure(property)?.treatableSqFt ?? null) : null,
    );
    return lawnsBySite(season, book.siteOffsets, lawns, today, round.dates.at(-1) ?? null);
  }, [season, book, round, plan, today, isMeasured]);
  return book === null || round === null ? null : { book, round, today, timing, season, groups };
}
