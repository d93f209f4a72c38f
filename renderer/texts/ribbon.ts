import { counted } from '../format/index.ts';

/** Words of the levels through a day, drawn and as a table. */
export const ribbonWords = {
  parts: {
    homeSpan: (from: string, until: string) => `home on 8 days of 10: ${from} to ${until}`,
    home: (clock: string) => `home ${clock}`,
  },
  table: {
    label: 'Levels through the day, as a table',
    whatHappens: 'What happens',
    levelHead: (line: string, capacity: string) => `${line}, of ${capacity}`,
  },
  ribbon: {
    label: (rig: string) => `Levels of ${rig}: time of day. Arrow keys step through the day.`,
  },
  layout: {
    break: 'Break',
    waiting: 'Waiting until the lawn may be entered',
    fillPoint: 'Visit to a fill point',
    loading: 'Loading before the start',
    evening: 'Rinse and records',
  },
  readout: {
    shiftStarts: (clock: string) => `${clock} shift starts`,
    leavesTheShop: (clock: string) => `${clock} leaves the shop`,
    atStop: (clock: string, stop: number, event: string) => `${clock} stop ${stop}, ${event}`,
    breakUntil: (clock: string, until: string) => `${clock} break until ${until}`,
    waitsUntil: (clock: string, until: string) => `${clock} waits until ${until}`,
    home: (clock: string) => `${clock} home`,
    whereInStop: (afterSqFt: number, stop: number) => `, ${afterSqFt > 0 ? 'in' : 'before'} stop ${stop}`,
    afterArea: (area: string) => ` after ${area}`,
    refillFromRig: 'refill from the rig',
    refillAtFillPoint: 'refill at a fill point',
    rinseWith: (volume: string) => `rinse with ${volume}`,
    intoNurseTank: (volume: string) => `${volume} into the nurse tank`,
    bags: (bags: number) => counted(bags, 'bag'),
    since: (clock: string, what: string) => `${clock}, since ${what}`,
  },
} as const;
