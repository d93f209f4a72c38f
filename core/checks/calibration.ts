import { rateCheck, rateIssue } from '../calibrate/index.ts';
import { named, type Rule } from './rule.ts';

/** Heads whose calibrated carrier differs from a mix by more than 5 %. */
export const calibration: Rule = {
  code: 'rate-differs',
  find: (book) =>
    book.machines.flatMap((machine) =>
      machine.heads.flatMap((head) => {
        if (head.purpose !== 'spray' || head.deliveredGalPer1000SqFt === undefined) return [];
        return book.mixes.flatMap((mix) => {
          const check = rateCheck(mix, head, book.products);
          const found =
            check.kind === 'differs' ? rateIssue(check, `${named('machine', machine)}, head ${head.name}`) : null;
          return found === null ? [] : [found];
        });
      }),
    ),
};
