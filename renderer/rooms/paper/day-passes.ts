import { useEffect, useState } from 'react';
import type { Property } from '../../../core/book/index.ts';
import type { PassPicture } from '../../../core/passes/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { type DayPasses, passesWanted } from '../../../core/reports/index.ts';
import { drawPasses, type PassWish, useBook } from '../../stores/index.ts';

type Pictures = Map<string, PassPicture | null>;

/** Pictures that were laid once stay until their lawn or the shed changes. */
let kept: { readonly machines: unknown; readonly pictures: WeakMap<Property, Pictures> } = {
  machines: null,
  pictures: new WeakMap(),
};

/** Passes of a day, once all are laid: a sheet that changes while it is read helps nobody. Till then `done` of `total` are. */
export type LaidPasses = { readonly passes: readonly DayPasses[]; readonly done: number; readonly total: number };

const NONE: LaidPasses = { passes: [], done: 0, total: 0 };

/** The passes that the maps of a day show, laid by the host; null asks for none. */
export function useDayPasses(day: PlanDay | null): LaidPasses {
  const session = useBook((state) => state.open?.session ?? null);
  const properties = useBook((state) => state.open?.book.properties ?? null);
  const machines = useBook((state) => state.open?.book.machines ?? null);
  const [laid, setLaid] = useState(NONE);
  useEffect(() => {
    setLaid(NONE);
    if (day === null || session === null || properties === null) return undefined;
    let isWanted = true;
    if (kept.machines !== machines) kept = { machines, pictures: new WeakMap() };
    const wanted = passesWanted(day);
    const missing = wanted.filter((each) => keptPicture(properties, each) === undefined);
    const tell = (count: number): boolean => {
      if (isWanted) setLaid({ passes: [], done: wanted.length - missing.length + count, total: wanted.length });
      return isWanted;
    };
    tell(0);
    void drawPasses(session, missing, (drawings) => tell(Math.min(drawings.length, missing.length - 1))).then(
      (drawings) => {
        for (const [index, drawing] of drawings.entries()) {
          const wish = missing[index];
          if (drawing.ok && wish !== undefined) keep(properties, wish, drawing.value);
        }
        const passes = wanted.flatMap((each): readonly DayPasses[] => {
          const picture = keptPicture(properties, each) ?? null;
          return picture === null ? [] : [{ ...each, picture }];
        });
        if (isWanted) setLaid({ passes, done: wanted.length, total: wanted.length });
      },
    );
    return () => {
      isWanted = false;
    };
  }, [day, session, properties, machines]);
  return laid;
}

const keyOf = ({ zoneId, machineId, headId }: PassWish): string => JSON.stringify([zoneId, machineId, headId]);

/** Null for a zone without turf on the map, undefined for what was not laid yet. */
function keptPicture(properties: readonly Property[], wish: PassWish): PassPicture | null | undefined {
  const property = properties.find((each) => each.id === wish.propertyId);
  return property === undefined ? null : kept.pictures.get(property)?.get(keyOf(wish));
}

function keep(properties: readonly Property[], wish: PassWish, picture: PassPicture | null): void {
  const property = properties.find((each) => each.id === wish.propertyId);
  if (property === undefined) return;
  const pictures = kept.pictures.get(property) ?? new Map();
  kept.pictures.set(property, pictures.set(keyOf(wish), picture));
}
