import { counted } from '../../format/index.ts';

/** Words of two fleets side by side. */
export const fleetsWords = {
  view: {
    nothingYet: 'Nothing to compare yet',
    nothingYetAdvice: 'Two choices of rigs are held against each other here, also with rigs that you only think of.',
    title: (round: string) => `Fleets for ${round}`,
    asItIs: 'As it is',
    newName: (number: number) => `Fleet ${number}`,
    addFleet: 'Add fleet',
    fleets: 'Fleets',
    addAFleet: 'Add a fleet',
    about:
      'A fleet is a choice of rigs of the Shed. Two are needed: add one for the rigs that you have, and one with the machine, rig or nurse tank that you think of (duplicate a rig in the Shed and change it).',
    nameOf: 'Name of the fleet',
    changeRigs: 'Change rigs of a fleet',
    place: (fleet: string) => `fleet ${fleet}`,
    oneRigNeeded: 'A fleet needs at least one rig.',
    fixedCost: 'fixed cost a season',
    fixedCostOf: (fleet: string) => `${fleet}: fixed cost a season`,
    changeFixedCost: 'Change fixed cost of a fleet',
    chooseTwo: 'Choose two different fleets',
    alreadyPlanning: 'Something is being planned already',
    against: (first: string, second: string) => `${first} against ${second}`,
    firstFleet: 'First fleet',
    secondFleet: 'Second fleet',
    roundsInSeason: 'Rounds like this one a season',
    likeThis: (rounds: number) => `${rounds === 1 ? 'round' : 'rounds'} like this a season`,
    planBoth: 'Plan both',
    note: (seconds: number) =>
      `The same lawns, days, hours and prices; each is searched for ${counted(seconds, 'second')}.`,
  },
  figures: {
    unlikeWork: (first: string, firstLawns: string, second: string, secondLawns: string) =>
      `The two do not do the same work: ${first} leaves out ${firstLawns}, ${second} ${secondLawns}. What that is worth is not in the cost.`,
    forRound: 'for this round',
    difference: 'difference',
    lastDay: 'last day of work',
    lawn: 'lawn',
    lawns: 'lawns',
    theSame: 'the same',
    less: 'less',
    more: 'more',
    cheaper: (second: string, saving: string, first: string) => `${second} costs ${saving} a season than ${first}`,
    cheaperParts: (saving: string, rounds: number, fixed: string) =>
      `: ${saving} for ${rounds} ${rounds === 1 ? 'round' : 'rounds'} like this one, ${fixed} fixed.`,
    treating: 'treating',
    driving: 'driving',
    refilling: 'refilling',
    settingUp: 'setting up',
    atShop: 'at the shop',
    waiting: 'waiting, breaks',
    hoursChart: 'Paid hours of both, by what they go into',
    hoursTitle: 'Paid hours by what they go into',
    hoursByKind: 'hours by kind',
    leavesOut: (result: string, lawns: string) => `${result} leaves out ${lawns}`,
  },
} as const;
