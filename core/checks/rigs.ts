import { issue } from '../base/index.ts';
import { named, type Rule } from './rule.ts';

/** Rigs that cannot leave the yard: overloaded by their machines alone, or with nothing to treat with. */
export const rigs: Rule = {
  code: 'rig-cannot-work',
  find: (book) =>
    book.rigs.flatMap((rig) => {
      const where = named('rig', rig);
      const machinesLb = rig.machines.reduce(
        (sum, each) => sum + (book.machines.find((machine) => machine.id === each.machineId)?.emptyWeightLb ?? 0),
        0,
      );
      const home = book.fillPoints.find((each) => each.id === rig.homeId);
      return [
        ...(machinesLb > rig.payloadLb
          ? [
              issue(
                'error',
                'rig-cannot-work',
                where,
                `Its machines weigh ${machinesLb} lb, its payload is ${rig.payloadLb} lb; carry fewer machines.`,
              ),
            ]
          : []),
        ...(rig.machines.length + rig.handMethodIds.length === 0
          ? [
              issue(
                'warning',
                'rig-cannot-work',
                where,
                'It carries neither machine nor hand method; give it something to treat with.',
              ),
            ]
          : []),
        ...(home !== undefined && home.waterGpm === 0 && rig.nurseTankGal > 0
          ? [
              issue(
                'warning',
                'rig-cannot-work',
                where,
                `Its home ${home.name} has no water; plans take it that the rig leaves with what it needs.`,
              ),
            ]
          : []),
      ];
    }),
};
