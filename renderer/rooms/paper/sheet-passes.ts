import { useEffect, useMemo, useState } from 'react';
import type { Book, Property } from '../../../core/book/index.ts';
import type { SheetPasses } from '../../../core/reports/index.ts';
import { drawPasses, useBook } from '../../stores/index.ts';
import { paperWords } from '../../texts/index.ts';
import type { ChoiceOption } from '../../ui/index.ts';

/** Stands for no passes on the plan. */
export const NO_PASSES = '';

/** Heads whose passes can be drawn on the plan of a lawn, by machine and head, and none of them. */
export function passOptions(book: Book): readonly ChoiceOption<string>[] {
  const heads = book.machines.flatMap((machine) =>
    machine.heads
      .filter((head) => head.passes !== undefined)
      .map((head) => ({ value: JSON.stringify([machine.id, head.id]), words: `${machine.name}, ${head.name}` })),
  );
  return [{ value: NO_PASSES, words: paperWords.passes.noPasses }, ...heads];
}

/** The passes of a chosen head over the drawn zones of a lawn, laid by the host; null while there are none. */
export function useSheetPasses(property: Property | null, chosen: string): SheetPasses | null {
  const open = useBook((state) => state.open);
  const [passes, setPasses] = useState<SheetPasses | null>(null);
  const by = useMemo(() => {
    const options = open === null ? [] : passOptions(open.book);
    return options.find((each) => each.value === chosen && chosen !== NO_PASSES)?.words ?? null;
  }, [open, chosen]);
  const session = open?.session ?? null;
  useEffect(() => {
    setPasses(null);
    if (session === null || property === null || by === null) return undefined;
    let isWanted = true;
    const [machineId = '', headId = ''] = JSON.parse(chosen) as readonly string[];
    const drawn = property.zones.filter(({ shape }) => shape.kind === 'drawn');
    const wanted = drawn.map(({ id: zoneId }) => ({ propertyId: property.id, zoneId, machineId, headId }));
    void drawPasses(session, wanted).then((drawings) => {
      const pictures = drawings.flatMap((each) => (each.ok && each.value !== null ? [each.value] : []));
      if (isWanted) setPasses({ by, pictures });
    });
    return () => {
      isWanted = false;
    };
  }, [session, property, chosen, by]);
  return passes;
}
