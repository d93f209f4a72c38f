import { it } from 'vitest';
import { randomProblem } from '../random-problem.ts';
import { bruteForce } from './oracle.ts';

it('x', () => {
  for (const jobs of [3, 4, 5])
    for (let seed = 1; seed <= 6; seed += 1) {
      const t = performance.now();
      const truth = bruteForce(randomProblem(seed, { jobs, stations: 1, evenFlow: true, heavy: 0 }));
      console.log(
        jobs,
        seed,
        truth.unserved,
        truth.cost / 1e9,
        Math.round(performance.now() - t),
        truth.days[0]?.day.story.join('; '),
      );
    }
}, 600000);
