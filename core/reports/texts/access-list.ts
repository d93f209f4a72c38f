import { PAGE } from './page.ts';

/** Words of the access list. */
export const ACCESS_LIST = {
  title: (rig: string) => `Access list: ${rig}`,
  columns: {
    called: 'Called',
    stop: 'Stop',
    arrives: 'Arrives',
    call: 'Call',
    locked: 'Locked',
    mind: 'Watch for',
  },
  stop: PAGE.stop,
  none: 'The day has no stops.',
  about: 'Times are those of the plan. Where the label or local rules ask for notice, a call may not be enough.',
} as const;
