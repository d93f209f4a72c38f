import { useEffect, useMemo, useState } from 'react';
import type { Position } from '../../core/book/index.ts';
import type { RouteLeg } from '../map/index.ts';
import { callHost, useBook } from '../stores/index.ts';
import { mapWords } from '../texts/index.ts';

/** The drives of a day as they are drawn, and whose roads they follow; '' where they follow none. */
export type DrawnRoute = { readonly legs: readonly RouteLeg[]; readonly credit: string };

type Ways = { readonly asked: string; readonly ways: readonly (readonly Position[] | null)[]; readonly credit: string };

/**
 * Lays the drives of a day along the roads that lie beside the book, as soon as the host has found the ways; until then, and where it
 * knows none, they are straight lines.
 */
export function useWays(legs: readonly RouteLeg[]): DrawnRoute {
  const session = useBook((state) => state.open?.session ?? null);
  const roads = useBook((state) => state.open?.book.roads);
  const [found, setFound] = useState<Ways | null>(null);
  const asked = useMemo(
    () => (session === null || roads === undefined ? '' : JSON.stringify([session, roads, legs])),
    [session, roads, legs],
  );
  useEffect(() => {
    if (asked === '' || session === null || legs.length === 0) return;
    let isWanted = true;
    // Each drive by itself: one to a place that the book does not know any more is left out of the drives.
    const stops = legs.flatMap(({ from, to }): [number, number][] => [[...from], [...to]]);
    callHost('roads.ways', { session, stops: stops.slice(0, MOST_STOPS) })
      .then((answer) => {
        if (isWanted && answer.ok) setFound({ asked, ...answer.value });
      })
      .catch(() => undefined);
    return () => {
      isWanted = false;
    };
  }, [asked, session, legs]);
  return useMemo(() => {
    if (found === null || found.asked !== asked) return { legs, credit: '' };
    const drawn = legs.map((leg, index) => {
      const along = found.ways[2 * index] ?? null;
      return along === null ? leg : { ...leg, along };
    });
    return { legs: drawn, credit: drawn.some((leg) => leg.along !== undefined) ? found.credit : '' };
  }, [found, asked, legs]);
}

/** The contract takes a thousand. */
const MOST_STOPS = 1000;

/** What the corner of the map says of the drives. */
export function routeCaption(route: readonly RouteLeg[], credit: string): string {
  const byRoad = route.filter((leg) => leg.along !== undefined).length;
  if (byRoad === 0) return mapWords.scene.straightLinesNotRoads;
  const whose = credit === '' ? '' : ` · ${credit}`;
  return byRoad === route.length ? mapWords.scene.alongRoads(whose) : mapWords.scene.partlyAlongRoads(whose);
}
