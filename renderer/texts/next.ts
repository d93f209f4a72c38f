/** What is said where something is missing: of the next thing, and on the button that leads to it. */
export const nextWords = {
  lookAtSample: 'Look at the sample',
  beingPlanned: 'The round is being planned',
  steps: {
    lawns: { says: 'First come the lawns.', button: 'Add lawns from a file…' },
    machines: { says: 'Next come the machines and hoses that treat them.', button: 'Go to the machines' },
    fillPoints: { says: 'Next comes the place where the trucks start and fill up.', button: 'Go to the fill points' },
    rigs: { says: 'Next come the trucks with their crews.', button: 'Go to the rigs' },
    treatments: { says: 'Next comes what is applied.', button: 'Go to the treatments' },
    round: { says: 'Next comes a round: what is applied, on which days, by which rigs.', button: 'Add a round' },
    plan: { says: 'All is there for a plan.', button: 'Plan this round' },
    stops: {
      says: 'The plan has no stop: the Round room lists the reason of every rig.',
      button: 'See why in the Round room',
    },
  },
} as const;
