/** The words of the tour. What they say of a book is put in from the book and its plan. */
export const tourWords = {
  lawn: {
    title: 'Ground: the lawns',
    says: (name: string, area: string) =>
      `${name} has ${area} to treat: turf measured on the ground, less buildings, paving and beds. Lawns come from a file, are drawn on the map, or have a stated area.`,
    any: 'Every lawn stands here with its turf. Lawns come from a file, are drawn on the map, or have a stated area.',
  },
  machine: {
    title: 'Shed: what treats them',
    says: (name: string, width: string, holds: string) =>
      `${name} needs ${width} to pass a gate${holds === '' ? '' : ` and takes ${holds}`}. Rates and limits are yours to enter from the label; the program has none.`,
    holds: (amount: string, place: string) => `${amount} in its ${place}`,
    any: 'Machines, hoses, trucks and products stand here. Rates and limits are yours to enter from the label.',
  },
  plan: {
    title: 'Round: what has to be done by when',
    says: (name: string, stops: number, refills: number, paid: string) =>
      `${name} comes to ${stops} stops, ${refills} refills and ${paid} of paid time. Change a day, a rig or a lawn and plan again.`,
  },
  refill: {
    title: 'Day: where it runs out',
    says: (clock: string, rig: string, stop: string, reason: string) =>
      `Here, at ${clock}, ${rig} has to fill up in the middle of ${stop}. ${reason} Each line is a tank, a hopper or a stock: it falls as ground is covered and rises at a refill.`,
    any: 'Each line is a tank, a hopper or a stock: it falls as ground is covered and rises at a refill.',
  },
  fit: {
    title: 'Day: who can go',
    says: (gate: string, gateWidth: string, machine: string, width: string) =>
      `The ${gate} is ${gateWidth} wide, ${machine} is ${width}: zone by zone the table has the minutes of whoever can go, and the reason of whoever cannot.`,
    any: 'Zone by zone the table has the minutes of whoever can go, and the reason of whoever cannot.',
  },
  paper: {
    title: 'Paper: what the crew takes along',
    says: (rig: string, date: string) =>
      `The run sheet of ${rig} for ${date}, as it will be printed. Load tickets, truck list and records are in the list beside. Then begin with your own lawns: Menu, Start or open a book.`,
    any: 'Sheets stand here as they will be printed. Then begin with your own lawns: Menu, Start or open a book.',
  },
  region: 'Tour',
  count: (at: number, all: number) => `Step ${at} of ${all}`,
  next: 'Next',
  back: 'Back',
  done: 'Done',
  leave: 'Leave the tour',
} as const;
