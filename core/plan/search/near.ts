import type { JobTable } from './tables.ts';

/** Neighbours kept of each job: enough for ruin and re-insertion, and memory grows with the number of jobs alone. */
const MOST_NEAR = 100;

/** Nodes (job + 1) by nearness to each node, itself first: row-major [node * width + rank]. */
export type Near = { readonly width: number; readonly near: Int32Array };

/** The nearest jobs of every job by the time there and back. Work: jobs squared, with an insertion only for what is among the nearest. */
export function nearest(table: JobTable): Near {
  const { jobs, places, placeOf } = table;
  const { travelMs } = table.problem;
  const width = Math.min(jobs, MOST_NEAR + 1);
  const near = new Int32Array((jobs + 1) * width);
  const far = new Float64Array(width);
  for (let job = 0; job < jobs; job += 1) {
    const row = (job + 1) * width;
    const place = placeOf[job] as number;
    let count = 0;
    for (let k = 0; k < jobs; k += 1) {
      // The job itself first, the others in their order, so that ties are settled the same way every time.
      const other = k === 0 ? job : k <= job ? k - 1 : k;
      const there = placeOf[other] as number;
      const ms =
        k === 0 ? -1 : (travelMs[place * places + there] as number) + (travelMs[there * places + place] as number);
      if (count === width && ms >= (far[width - 1] as number)) continue;
      let at = count < width ? count : width - 1;
      for (; at > 0 && (far[at - 1] as number) > ms; at -= 1) {
        far[at] = far[at - 1] as number;
        near[row + at] = near[row + at - 1] as number;
      }
      far[at] = ms;
      near[row + at] = other + 1;
      if (count < width) count += 1;
    }
  }
  return { width, near };
}
