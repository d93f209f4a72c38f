/** Words of finding places by address. */
export const addressesWords = {
  dialog: {
    title: 'Find places by address',
    about:
      'Without any network: the house numbers along the street lines of a file of yours say about where an address is, often to 100 ft. Lawns placed so are marked until you move them by hand.',
    noneTicked: 'No lawn is ticked',
    placeOne: 'Place 1 lawn',
    placeSome: (lawns: number) => `Place ${lawns} lawns`,
  },
  sought: {
    good: 'in the block',
    fair: 'near the block, or by a like name',
    poor: 'a guess; look at it',
    looking: 'Looking addresses up…',
    noneWaits:
      'No lawn of the book waits for a place: each has an outline, a place set by hand or from a file, or no address.',
    found: (found: number, sought: number) => `${found} of ${sought} lawns have a place by their address`,
    tableLabel: 'Lawns and their places',
    placeHead: 'place it',
    foundHead: 'found',
    movesHead: 'moves',
    placeLawn: (lawn: string) => `Place ${lawn}`,
  },
  streets: {
    title: 'Street files',
    open: 'Open a street file…',
    noneYet:
      "None yet. Open street lines with house numbers, as GeoJSON or a zipped Shapefile: such as a county's table with FULLNAME, LFROMADD, LTOADD, RFROMADD and RTOADD. Many counties, and the census, give them away.",
    counts: (streets: string, blocks: string) => `${streets} streets, ${blocks} blocks`,
    takeOff: (file: string) => `Take ${file} off`,
    takeOffNote: 'Look addresses up in it no more',
  },
  newLawn: {
    title: 'Add a lawn at an address',
    label: 'Address of the new lawn',
    placeholder: '12 Oak Street, 45501',
    add: 'Add it',
  },
} as const;
