import { type Issue, issue } from '../base/index.ts';
import type { Book, Rig } from '../book/index.ts';
import { named, type Rule } from './rule.ts';

/** Rigs that cannot leave the yard or cannot use what they carry. */
export const rigs: Rule = {
  code: 'rig-cannot-work',
  find: (book) =>
    book.rigs.flatMap((rig) => [
      ...overloaded(book, rig),
      ...withoutTools(rig),
      ...withoutSource(book, rig),
      ...dryHome(book, rig),
    ]),
};

function cannot(severity: Issue['severity'], rig: Rig, message: string): readonly Issue[] {
  return [issue(severity, 'rig-cannot-work', named('rig', rig), message)];
}

function overloaded(book: Book, rig: Rig): readonly Issue[] {
  const machinesLb = rig.machines.reduce(
    (sum, each) => sum + (book.machines.find((machine) => machine.id === each.machineId)?.emptyWeightLb ?? 0),
    0,
  );
  if (machinesLb <= rig.payloadLb) return [];
  const message = `Its machines weigh ${machinesLb} lb, its payload is ${rig.payloadLb} lb; carry fewer machines.`;
  return cannot('error', rig, message);
}

function withoutTools(rig: Rig): readonly Issue[] {
  if (rig.machines.length + rig.handMethodIds.length > 0) return [];
  return cannot('warning', rig, 'It carries neither machine nor hand method; give it something to treat with.');
}

/** A hose that draws from a machine is of no use where that machine is not aboard. */
function withoutSource(book: Book, rig: Rig): readonly Issue[] {
  const aboard = new Set(rig.machines.map((each) => each.machineId));
  return book.handMethods
    .filter((hand) => rig.handMethodIds.includes(hand.id))
    .flatMap((hand) => {
      const from = hand.drawsFrom;
      if (from.kind !== 'machine' || aboard.has(from.machineId)) return [];
      const message = `Its ${named('hand method', hand)} draws from machine ${from.machineId}, which is not aboard; carry the machine or leave the method out.`;
      return cannot('warning', rig, message);
    });
}

function dryHome(book: Book, rig: Rig): readonly Issue[] {
  const home = book.fillPoints.find((each) => each.id === rig.homeId);
  if (home === undefined || home.waterGpm > 0 || rig.nurseTankGal === 0) return [];
  const message = `Its home ${home.name} has no water; plans take it that the rig leaves with what it needs.`;
  return cannot('warning', rig, message);
}
