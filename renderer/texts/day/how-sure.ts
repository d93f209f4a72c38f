import { counted } from '../../format/index.ts';

/** Words of how sure a day is. */
export const howSureWords = {
  view: {
    playing: 'Playing the day…',
    homeBy: (clock: string) => `9 days in 10 home by ${clock}`,
    homeSpread: (planned: string, half: string, late: string) =>
      `Planned ${planned}; half of all days home by ${half}, 1 in 10 by ${late}.`,
    doneByShiftEnd: (clock: string, share: string) => `All done by the end of the shift, ${clock}: ${share}.`,
    runsOut: (share: string, refills: string) =>
      `Something runs out at a stop before its planned refill: ${share}; a refill more than planned: ${refills}.`,
    closedBefore: (share: string) => `A lawn has closed before the rig is there: ${share}.`,
    about: (days: number) =>
      `${counted(days, 'day')} played with times and amounts that go from the plan as set beside. Who runs out fills again at once. Morning and evening work and breaks last as planned.`,
    never: 'never',
    always: 'always',
    rarely: 'less than 1 day in 100',
    nearlyAlways: 'more than 99 days in 100',
    daysInHundred: (days: number) => `${days} ${days === 1 ? 'day' : 'days'} in 100`,
    loadRisk: (load: number, share: string) => `load ${load}: ${share}`,
    stop: 'stop',
    planned: 'planned',
    mostDays: '8 days in 10',
    timesLabel: 'When the rig is where',
    timesTitle: 'When the rig arrives, 8 days in 10, and what may go wrong there',
    mayRunOut: 'may run out',
    mayBeClosed: 'may be closed',
    driving: 'driving',
    setUp: 'set-up, refills',
    treating: 'treating',
    amountsUsed: 'amounts used',
    title: 'How far days go from the plan',
    what: 'what',
    timesThePlan: 'times the plan',
    giveOrTake: 'give or take',
    meanOf: (what: string) => `${what}: on average, times the plan`,
    change: (what: string) => `Change spread of ${what}`,
    deviationOf: (what: string) => `${what}: give or take`,
    sameAllDay: 'the same all day',
    shared: 'part of it that a whole day has in common',
    changeShared: 'Change what a day has in common',
    needsVisits: (visits: number, had: number) =>
      `${counted(visits, 'visit')} with times or amounts written down are needed; there are ${had}`,
    learned: 'Learn the spread from recorded visits',
    learn: 'Learn from what was recorded',
    learnedFigure: (what: string, figures: number, mean: string, deviation: number) =>
      `${what}: ${counted(figures, 'figure')}, on average ${mean} times the plan, give or take ${deviation} %`,
    guessNote: 'These figures are a guess to start with: set your own, or learn them.',
  },
} as const;
