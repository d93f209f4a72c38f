import { counted } from '../../format/index.ts';

/** Words around the rooms: the welcome, menus, dialogs. */
export const appWords = {
  app: {
    opening: 'Opening…',
    noKey: 'This page was opened without its key. Open the address that the program printed when it was started.',
    noAnswer: 'The program does not answer. Start it again and open the address that it prints.',
  },
  backups: {
    damagedNote:
      'The newest backup below brings the book back as it was then. The damaged file is kept beside it under another name.',
    about:
      'While a book is edited the program copies it every quarter of an hour and when it is closed. It keeps three copies of today, one of each day before, ten in all, on this machine: write a copy to another disk as well.',
    noneYet: 'There is no backup of this book yet.',
    edits: (edits: number) => counted(edits, 'edit'),
    restoreOf: (when: string) => `Restore ${when}`,
    restore: 'Restore…',
    becomesBackup: 'The book as it is now becomes one more backup.',
    setAside: 'The damaged file is set aside.',
    beingRestored: 'It is being restored',
    putInPlace: 'Put it in place',
    keepTheBook: 'Keep the book',
  },
  boot: {
    program: 'the program behind this page',
    connectionGone: 'The connection to the program is gone.',
    connectionGoneAdvice: 'Start Swardway again; every edit that was shown as saved is in the book.',
  },
  header: {
    rooms: 'Rooms',
    notSaved: 'not saved · try again',
    invented: 'invented · ',
    readOnly: 'read only',
    saving: 'saving…',
    saved: (clock: string) => `saved ${clock}`,
    toCheck: 'to check',
    thingsToCheck: (things: number) => `${counted(things, 'thing')} to check`,
  },
  mainMenu: {
    menu: 'Menu',
    commands: 'Commands',
  },
  notices: {
    label: 'Notice',
    close: 'Close this notice',
  },
  overlays: {
    backups: 'Backups of this book',
    findACommand: 'Find a command',
    commands: 'Commands',
    noneFound: 'No command is called that.',
    keys: 'Keys',
    elsewhere: 'In lists, map and ribbon',
    moveInList: 'Move in a list',
    moveTheMap: 'Move the map',
    mapZoom: 'Map closer, farther',
    example: '+ −',
    moveCrosshair: 'While drawing: move the crosshair, by 1 ft, by 0.1 ft',
    setCorner: 'While drawing: set a corner, finish',
    keysSetCorner: 'Enter, Enter twice',
    noSnapping: 'While drawing: no snapping, move the map',
    keysNoSnapping: 'Alt, Space',
    ribbonEvents: 'Next or previous event on the ribbon',
    sizePanel: 'Size a panel, fold it',
    takeText: 'Take typed text, drop it',
    keysTakeText: 'Enter, Esc',
    what: 'Plans days of lawn treatment: how much turf there is, which machine reaches it, what goes into each fill, where to refill, and when the truck is home.',
    caution:
      'It gives no advice on products. The label is the law; mind wind, heat, water, slopes, people and pets, and keep to local rules.',
    ownWindow: 'in its own window',
    inABrowser: 'in a browser',
    versions: (version: string, host: string, platform: string, sqlite: string) =>
      `Version ${version}, ${host}, ${platform}, SQLite ${sqlite}`,
    copyDiagnostics: 'Copy diagnostics',
    diagnosticsNote:
      'Versions, sizes and the end of the log as text, for a report of a fault. No name, address or place is in it.',
  },
  welcome: {
    claim:
      'Real lawns in, a day that fits out: turf measured, machines matched to gates, every fill and refill placed.',
    sampleTitle: 'Look at an invented book',
    sampleNote: 'Places, people, products and rates are made up and not for use.',
    yourOwn: 'Your own',
    openBookFile: 'Open a book file…',
    groundFor: 'what there is to treat',
    shedFor: 'what you treat it with',
    roundFor: 'what has to be done by when',
    dayFor: 'who goes where, and what runs out',
    paperFor: 'what the crew takes along',
    rigs: (rigs: number) => counted(rigs, 'rig'),
    newBook: 'New book',
    nameOfNew: 'Name of the new book',
    startEmpty: 'Start an empty book',
    openedBefore: 'Opened before',
    goneNote: 'The file is no longer there',
    missing: 'missing: ',
  },
} as const;
