import { counted } from '../format/index.ts';

/** Words of the passes over a zone. */
export const passesWords = {
  panel: {
    passes: 'Passes',
    showOnMap: 'Show on the map',
    passesOf: 'Passes of',
    laying: 'Laying the passes…',
    noOutline: 'This zone has no outline with turf, so no passes can be laid.',
    alongWay: 'Along the way',
    stepAdvice: 'Point at a pass on the map, or step along with the arrow keys.',
    swath: 'swath, driven as its arrow points',
    trimPass: 'trim pass along the edge, run into a corner',
    transit: 'way without material',
    twice: 'gone over twice',
    missed: 'not reached',
    reckoning: 'Reckoning the passes…',
  },
  leg: {
    names: { trim: 'Trim pass', corner: 'Run into a corner', swath: 'Swath', transit: 'Way without material' },
    which: (name: string, number: number, of: number): string => `${name} ${number} of ${of}`,
    long: (length: string): string => `${length} long`,
    wide: (length: string): string => `${length} wide`,
    covered: (area: string): string => `${area} covered`,
    told: (size: string, from: string, time: string): string => `${size}; begins at ${from}, takes ${time}`,
    minutes: (time: string): string => `${time} min`,
  },
  figures: {
    passes: 'passes',
    counts: (trims: number, corners: number, swaths: number): string =>
      [
        counted(trims, 'trim pass', 'trim passes'),
        ...(corners === 0 ? [] : [counted(corners, 'run into a corner', 'runs into corners')]),
        counted(swaths, 'swath'),
      ].join(', '),
    swathsRun: 'swaths run',
    time: 'time',
    way: 'way',
    wayOf: (treating: string, not: string): string => `${treating} treating, ${not} not`,
    twice: 'gone over twice',
    twiceOf: (share: string, worst: string): string => `${share}; ${worst} times at the worst place`,
    missed: 'not reached',
    missedOf: (share: string, area: string): string => `${share}, ${area} to trim by hand`,
    markOf: (amount: string, length: string): string => `${amount} over ${length}`,
  },
} as const;
