/** What each sheet is called and what it is for, in lists. */
export const SHEET_NAMES = {
  'run-sheet': { name: 'Run sheet', about: 'The day in order, for the crew' },
  'load-tickets': { name: 'Load tickets', about: 'One page for each fill' },
  'truck-list': { name: 'Truck list', about: 'What to carry, and its weight' },
  'access-list': { name: 'Access list', about: 'Whom to call, locked gates, what to watch for' },
  'map-pages': { name: 'Map pages', about: 'The way of the day, and the passes on each lawn' },
  'measure-sheet': { name: 'Measure sheet', about: 'One lawn with its areas' },
  'application-records': { name: 'Application records', about: 'What was put down, as rules ask for it' },
  'record-history': { name: 'Record versions', about: 'Corrections of one lawn, with who and why' },
  notices: { name: 'Notices', about: 'Your own letter to each customer' },
  postings: { name: 'Signs to post', about: 'Your own sign for each lawn' },
  'round-summary': { name: 'Round summary', about: 'Days, what to order, cost' },
  'fleet-comparison': { name: 'Fleet comparison', about: 'Fleets on the same round' },
  'season-ledger': { name: 'Season ledger', about: 'A year against labels and caps' },
  'calibration-record': { name: 'Calibration record', about: 'Every calibration that was kept' },
} as const;
