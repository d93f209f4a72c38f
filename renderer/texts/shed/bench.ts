/** Words of the calibration bench. */
export const benchWords = {
  bench: {
    calculationFor: (owner: string) => `Calculation for ${owner}`,
    fillIn: (which: string) => `${which}. Fill in what was measured; the rest follows.`,
    keepCalibration: 'Keep calibration',
    keepIt: 'Keep it',
    madeOn: 'made on',
    by: 'by',
    madeBy: 'made by',
    setting: 'setting',
    settingLabel: 'setting: tip, pressure, gate or gear',
    settingPlaceholder: 'tip, pressure, gate, gear',
    keepWith: (owner: string) => `Keep with ${owner}`,
    fillInFirst: 'Fill in what was measured first.',
    dueAfterUses: 'due after uses',
    due: 'A new calibration is due.',
    dueAfterUsesOf: (owner: string) => `due after uses, ${owner}`,
    changeDue: 'Change when calibration is due',
    daysUsed: 'days used since',
    daysUsedOf: (owner: string) => `days used since, ${owner}`,
    changeDaysUsed: 'Change days used since calibration',
  },
  answer: {
    working: 'Working',
    source: (source: string) => `Source: ${source}`,
    tipsTitle: 'Tips, pressures and speeds that give the rate, nearest first',
    tip: 'tip',
    psi: 'psi',
    mph: 'mph',
    galPerArea: 'gal/1,000 ft²',
    dropletsNote: 'Which droplets a tip makes is for its maker to state.',
  },
  state: {
    noTip: 'No tip gives this rate within these limits.',
    noTipAdvice: 'Widen pressure or speed.',
  },
  history: {
    none: 'No calibration kept yet.',
    range: (name: string, unit: string, least: string, most: string, count: number) =>
      `${name}, ${unit}: ${least} to ${most} over ${count} calibrations`,
  },
  part: {
    calibrationBench: 'Calibration bench',
    headChosen: 'Head to calibrate',
  },
  form: {
    flOz: 'fl oz',
    ozByWeight: 'oz by weight',
    tipSize: 'size of the tip (ISO 10625)',
    notSaid: 'not said',
    unitProduct: 'unit of the product',
  },
} as const;
