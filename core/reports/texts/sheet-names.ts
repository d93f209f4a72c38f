/** What each sheet is called and what it is for, in lists. */
export const SHEET_NAMES = {
  'run-sheet': { name: 'Run sheet', about: 'The day in order, for the crew' },
  'load-tickets': { name: 'Load tickets', about: 'One page for each fill' },
  'truck-list': { name: 'Truck list', about: 'What to carry, and its weight' },
  'measure-sheet': { name: 'Measure sheet', about: 'One lawn with its areas' },
} as const;
