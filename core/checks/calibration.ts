import { issue } from '../base/index.ts';
import { rateCheck } from '../calibrate/index.ts';
import { named, type Rule } from './rule.ts';

/** Heads whose calibrated carrier differs from a mix by more than 5 %. */
export const calibration: Rule = {
  code: 'rate-disagrees',
  find: (book) =>
    book.machines.flatMap((machine) =>
      machine.heads.flatMap((head) => {
        if (head.purpose !== 'spray' || head.deliveredGalPer1000SqFt === undefined) return [];
        return book.mixes.flatMap((mix) => {
          const check = rateCheck(mix, head);
          if (check.kind !== 'differs') return [];
          return [
            issue(
              'warning',
              'rate-disagrees',
              `${named('machine', machine)}, head ${head.name}, ${named('mix', mix)}`,
              check.words,
            ),
          ];
        });
      }),
    ),
};
