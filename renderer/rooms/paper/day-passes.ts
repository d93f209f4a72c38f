import { useEffect, useState } from 'react';
import type { Property } from '../../../core/book/index.ts';
import type { PassPicture } from '../../../core/passes/index.ts';
import type { PlanDay } from '../../../core/plan/result/index.ts';
import { type DayPasses, passesWanted } from '../../../core/reports/index.ts';
import { callHost, useBook } from '../../stores/index.ts';

/** Passes that are laid at the same time. */
const AT_ONCE = 2;

type Wanted = Omit<DayPasses, 'picture'>;
/** Pictures that were laid once stay until their lawn or the shed changes. */
let laidFor: { readonly machines: unknown; readonly pictures: WeakMap<Property, Map<string, PassPicture | null>> } = {
  machines: null,
  pictures: new WeakMap(),
};

/** Passes of a day, once all are laid: a sheet that changes while it is read helps nobody. Till then `done` of `total` are. */
export type LaidPasses = { readonly passes: readonly DayPasses[]; readonly done: number; readonly total: number };

const NONE: LaidPasses = { passes: [], done: 0, total: 0 };

/** The passes that the maps of a day show, laid by the host one after the other; null asks for none. */
export function useDayPasses(day: PlanDay | null): LaidPasses {
  const session = useBook((state) => state.open?.session ?? null);
  const properties = useBook((state) => state.open?.book.properties ?? null);
  const machines = useBook((state) => state.open?.book.machines ?? null);
  const [laid, setLaid] = useState(NONE);
  useEffect(() => {
    setLaid(NONE);
    if (day === null || session === null || properties === null) return undefined;
    let isWanted = true;
    if (laidFor.machines !== machines) laidFor = { machines, pictures: new WeakMap() };
    const wanted = passesWanted(day);
    const found = new Map<Wanted, PassPicture | null>();
    const tell = () => {
      const passes = wanted.flatMap((each): readonly DayPasses[] => {
        const picture = found.get(each) ?? null;
        return picture === null ? [] : [{ ...each, picture }];
      });
      if (isWanted)
        setLaid({ passes: found.size < wanted.length ? [] : passes, done: found.size, total: wanted.length });
    };
    const waiting = [...wanted];
    const work = async (): Promise<void> => {
      for (let next = waiting.shift(); next !== undefined && isWanted; next = waiting.shift()) {
        found.set(next, await pictureOf(session, properties, next));
        tell();
      }
    };
    tell();
    for (let seat = 0; seat < AT_ONCE; seat += 1) void work();
    return () => {
      isWanted = false;
    };
  }, [day, session, properties, machines]);
  return laid;
}

async function pictureOf(
  session: string,
  properties: readonly Property[],
  wanted: Wanted,
): Promise<PassPicture | null> {
  const property = properties.find((each) => each.id === wanted.propertyId);
  if (property === undefined) return null;
  const key = JSON.stringify([wanted.zoneId, wanted.machineId, wanted.headId]);
  const { pictures } = laidFor;
  const known = pictures.get(property) ?? new Map<string, PassPicture | null>();
  pictures.set(property, known);
  const before = known.get(key);
  if (before !== undefined) return before;
  const answer = await callHost('passes.draw', { session, ...wanted });
  if (!answer.ok) return null;
  known.set(key, answer.value.picture);
  return answer.value.picture;
}
