import { useMemo } from 'react';
import type { Book, Property } from '../../../core/book/index.ts';
import type { PlanStop } from '../../../core/plan/result/index.ts';
import { PassPanel, type PassSubject } from '../../passes/index.ts';
import { stopsWords } from '../../texts/day/index.ts';

type StopPassesProps = { readonly book: Book; readonly property: Property; readonly stop: PlanStop };

/** The passes by which machines treat the zones of a stop. */
export function StopPasses({ book, property, stop }: StopPassesProps) {
  const subjects = useMemo(() => subjectsOf(book, property, stop), [book, property, stop]);
  return <PassPanel subjects={subjects} whyNone={stopsWords.passes.noneReckoned} />;
}

function subjectsOf(book: Book, property: Property, stop: PlanStop): readonly PassSubject[] {
  const subjects = new Map<string, PassSubject>();
  for (const { method, zoneId } of stop.tasks) {
    if (method.kind === 'hand') continue;
    const { machineId, headId } = method;
    const zone = property.zones.find((each) => each.id === zoneId);
    const machine = book.machines.find((each) => each.id === machineId);
    const head = machine?.heads.find((each) => each.id === headId);
    if (zone === undefined || zone.shape.kind === 'stated' || head?.passes === undefined) continue;
    subjects.set(JSON.stringify([zoneId, machineId, headId]), {
      words: `${zone.name}: ${machine?.name ?? ''}, ${head.name}`,
      wish: { propertyId: property.id, zoneId, machineId, headId },
    });
  }
  return [...subjects.values()];
}
