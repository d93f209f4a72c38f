/** Words of the parts that all screens are made of. */
export const uiWords = {
  checksList: {
    show: (where: string) => `Show ${where}`,
    showFinding: 'Show',
    nothingToPutRight: 'There is nothing to put right there any more, or a round needs it.',
  },
  firstRows: {
    showMore: (left: string) => `Show more: ${left} left`,
  },
  issueList: {
    error: 'Error',
    warning: 'Warning',
    note: 'Note',
    row: 'thing',
  },
  monthDayInput: {
    notSet: 'not set',
    dayAndMonth: 'day and month',
  },
  quantityInput: {
    gallonsPerMinute: (figure: string) => `${figure} gal/min`,
    perMinute: (volume: string) => `${volume}/min`,
    minutes: (figure: string) => `${figure} min`,
    noNumber: (text: string) => `"${text}" is not a number.`,
    noNumberAdvice: 'Write a figure such as 12 or 0.5.',
    noDegrees: 'This is no longitude or latitude.',
    noDegreesAdvice: 'Write degrees, such as -89.440035.',
    notWhole: 'This has to be a whole number.',
    notWholeAdvice: 'Write 0, 1, 2 and so on.',
    notPositive: 'This has to be more than zero.',
    notPositiveAdvice: 'Write a larger figure.',
    tooLarge: (most: number) => `This can be ${most} at most.`,
    tooLargeAdvice: 'Write a smaller figure.',
    notSet: 'not set',
  },
  splitter: {
    folded: 'folded',
    pixels: (sizePx: number) => `${sizePx} pixels`,
    title: (panel: string) => `${panel}: drag, arrow keys, Enter folds`,
  },
  workbench: {
    width: 'Width',
    height: 'Height',
    sizeOf: (size: string, panel: string) => `${size} of: ${panel}`,
    unfold: (panel: string) => `Unfold: ${panel}`,
    unfoldTip: 'Unfold',
  },
} as const;
