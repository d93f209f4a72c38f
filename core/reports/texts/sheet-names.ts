/** What each sheet is called and what it is for, in lists. */
export const SHEET_NAMES = {
  'run-sheet': { name: 'Run sheet', about: 'The day in order, for the crew' },
  'load-tickets': { name: 'Load tickets', about: 'One page for each fill' },
  'truck-list': { name: 'Truck list', about: 'What to carry, and its weight' },
  'map-pages': { name: 'Map pages', about: 'The way of the day, and the passes on each lawn' },
  'measure-sheet': { name: 'Measure sheet', about: 'One lawn with its areas' },
} as const;
