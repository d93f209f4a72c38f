/** Words of the shelves themselves. */
export const shedWords = {
  room: {
    money: 'Money and driving',
    wholeBook: 'For the whole book',
    moneyAbout:
      'Plans take the cheapest way by these figures. None of them is made up: what stays at nothing weighs nothing.',
    roads: 'Roads',
    roadsAbout:
      'The roads themselves lie in a file beside the book, with the same name. It can be thrown away and imported again.',
    shed: 'Shed',
    shelves: 'Shelves',
    details: 'Details',
    invented: 'Invented book: machines, products and rates are made up and not for use.',
  },
  part: {
    addOne: (one: string) => `Add a ${one}`,
    added: (one: string) => `Add ${one}`,
    none: 'None.',
    removeOf: (name: string) => `Remove ${name}`,
  },
  column: {
    yes: 'yes',
    no: 'no',
    notEntered: 'not entered',
    changed: (column: string) => `Change ${column}`,
    nothingToChoose: 'nothing to choose',
    tooLong: 'This is longer than 200 characters.',
  },
  shelf: {
    an: 'an',
    a: 'a',
    add: (article: string, one: string) => `Add ${article} ${one}`,
    noneYet: (plural: string) => `No ${plural} yet`,
    nothingYet: 'The figures of what you add are entered here.',
    do: 'do',
    duplicateOf: (name: string) => `Duplicate ${name}`,
    duplicate: 'Duplicate',
    removeOf: (name: string) => `Remove ${name}`,
    toFillPoints: 'Go to the fill points',
  },
} as const;
