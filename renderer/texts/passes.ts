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
} as const;
