import { useEffect } from 'react';
import type { Book } from '../../../../core/book/index.ts';
import { forgetRoadsStatus, loadRoads, useBook } from '../../../stores/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';
import { AvoidedAreas } from './avoided.tsx';
import { HowDriven, RoadSpeeds } from './driving.tsx';
import { RoadEngine } from './engine.tsx';
import { LearnedSpeeds } from './learned.tsx';
import { LoadedRoads } from './loaded.tsx';

/** Driving by real roads: what was imported, how it is driven, and what it is good for. */
export function RoadsPanel({ book }: { readonly book: Book }) {
  const session = useBook((state) => state.open?.session);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is known of another book's roads goes.
  useEffect(() => forgetRoadsStatus, [session]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when the book is another one, or its roads or places are.
  useEffect(() => {
    const soon = setTimeout(() => {
      loadRoads().catch(() => undefined);
    }, SOON_MS);
    return () => clearTimeout(soon);
  }, [session, book.roads, book.properties, book.fillPoints, book.rigs]);
  return (
    <div className="shelf shelf-roads">
      <header className="shelf-head">
        <div>
          <h2>{roadsWords.panel.roads}</h2>
          <p className="quiet small">{roadsWords.panel.about}</p>
        </div>
      </header>
      <LoadedRoads roads={book.roads} />
      <HowDriven book={book} />
      <RoadSpeeds roads={book.roads} />
      <AvoidedAreas roads={book.roads} />
      <LearnedSpeeds roads={book.roads} />
      <RoadEngine />
    </div>
  );
}

/** An edit is stored before the host is asked what comes of it. */
const SOON_MS = 300;
