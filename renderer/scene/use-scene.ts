import { useMemo } from 'react';
import { type Book, PLAIN_ROADS, type Position, type Property } from '../../core/book/index.ts';
import type { Plan, PlanDay } from '../../core/plan/result/index.ts';
import { TIGHT_SPARE_IN } from '../../core/reach/index.ts';
import type { Formatter } from '../format/index.ts';
import type { FillMark, GateScale, LawnLabel, MapScene, RouteLeg } from '../map/index.ts';
import { useBook, useFormat, useSelection } from '../stores/index.ts';
import { mapWords } from '../texts/index.ts';
import { routeCaption, useWays } from './use-ways.ts';

/** What a room wants the map to show beside the lawns themselves. */
export type SceneWish =
  | { readonly kind: 'ground' }
  | { readonly kind: 'round'; readonly plan: Plan | null; readonly date: string | null; readonly rigId: string | null }
  | { readonly kind: 'day'; readonly day: PlanDay };

const NO_BOOK: readonly Property[] = [];
const NO_ROUTE: readonly RouteLeg[] = [];

/** The map's scene for a room, from the open book and the selection. */
export function useScene(wish: SceneWish): MapScene {
  const book = useBook((state) => state.open?.book ?? null);
  const selectedPropertyId = useSelection((state) => state.propertyId);
  const selectedZoneId = useSelection((state) => state.zoneId);
  const words = useFormat();
  const labels = useLabels(book, wish);
  const legs = useMemo(() => (wish.kind === 'day' && book !== null ? routeOf(book, wish.day) : NO_ROUTE), [book, wish]);
  const { legs: route, credit } = useWays(legs);
  const fillMarks = useMemo(() => (book === null ? [] : fillMarksOf(book)), [book]);
  const avoided = wish.kind === 'round' ? PLAIN_ROADS.avoid : (book?.roads ?? PLAIN_ROADS).avoid;
  const gateScale = useMemo(() => gateScaleOf(book), [book]);
  return useMemo(
    () => ({
      properties: book?.properties ?? NO_BOOK,
      labels,
      dimOthers: wish.kind === 'day',
      selectedPropertyId,
      selectedZoneId,
      fillMarks,
      avoided,
      route,
      routeCaption: routeCaption(route, credit),
      gateScale,
      gateWords: gateWordsOf(words),
    }),
    [book, labels, wish.kind, selectedPropertyId, selectedZoneId, fillMarks, avoided, route, credit, gateScale, words],
  );
}

function gateWordsOf(words: Formatter): (clearWidthIn: number) => string {
  return (clearWidthIn) => words.width(clearWidthIn);
}

function useLabels(book: Book | null, wish: SceneWish): ReadonlyMap<string, LawnLabel> {
  return useMemo(() => {
    if (book === null) return new Map();
    if (wish.kind === 'day') return stopLabels(wish.day);
    if (wish.kind === 'round' && wish.plan !== null) return dayLabels(wish.plan, wish.date, wish.rigId);
    return nameLabels(book.properties);
  }, [book, wish]);
}

function nameLabels(properties: readonly Property[]): ReadonlyMap<string, LawnLabel> {
  return new Map(
    properties.map((property) => [property.id, { text: property.name, kind: 'name', day: 0, spoken: property.name }]),
  );
}

function stopLabels(day: PlanDay): ReadonlyMap<string, LawnLabel> {
  const labels = new Map<string, LawnLabel>();
  for (const stop of day.stops) {
    const before = labels.get(stop.propertyId);
    const text = before === undefined ? String(stop.number) : `${before.text}, ${stop.number}`;
    labels.set(stop.propertyId, { text, kind: 'stop', day: 0, spoken: mapWords.scene.stop(text, stop.name) });
  }
  return labels;
}

const DAY_TONES = 6;

/** Lawns of a round by the day on which they are treated; with a day chosen, only that one is coloured. */
function dayLabels(plan: Plan, date: string | null, rigId: string | null): ReadonlyMap<string, LawnLabel> {
  const labels = new Map<string, LawnLabel>();
  plan.days.forEach((day, index) => {
    const shown = date === null || (day.date === date && day.rigId === rigId);
    for (const stop of day.stops) {
      const text = String(index + 1);
      const tone = shown ? (index % DAY_TONES) + 1 : 0;
      if (shown || !labels.has(stop.propertyId)) {
        labels.set(stop.propertyId, { text, kind: 'day', day: tone, spoken: mapWords.scene.day(stop.name, text) });
      }
    }
  });
  return labels;
}

function fillMarksOf(book: Book): readonly FillMark[] {
  const homes = new Set(book.rigs.map((rig) => rig.homeId));
  return book.fillPoints.map(({ id, name, at }) => ({ id, name, at, isHome: homes.has(id) }));
}

function gateScaleOf(book: Book | null): GateScale {
  const widths = book?.machines.map((machine) => machine.transitWidthIn) ?? [];
  return widths.length === 0 ? null : { narrowestMachineIn: Math.min(...widths), spareIn: TIGHT_SPARE_IN };
}

/** The drives of a day between places of the book. Drives to unknown places are left out. */
export function routeOf(book: Book, day: PlanDay): readonly RouteLeg[] {
  const places = new Map<string, Position>(book.properties.map((property) => [property.id, property.parking]));
  const fillPoints = new Set(book.fillPoints.map((point) => point.id));
  for (const point of book.fillPoints) places.set(point.id, point.at);
  const drives = day.activities.filter((activity) => activity.kind === 'drive');
  return drives.flatMap((drive, index) => {
    const from = places.get(drive.fromPlaceId);
    const to = places.get(drive.toPlaceId);
    if (from === undefined || to === undefined) return [];
    return [{ kind: legKind(index, drives.length, fillPoints, drive.fromPlaceId, drive.toPlaceId), from, to }];
  });
}

function legKind(
  index: number,
  count: number,
  fillPoints: ReadonlySet<string>,
  fromId: string,
  toId: string,
): RouteLeg['kind'] {
  if (index === 0) return 'out';
  if (index === count - 1) return 'home';
  return fillPoints.has(fromId) || fillPoints.has(toId) ? 'fill' : 'between';
}
