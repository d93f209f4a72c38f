import type { Fault } from './fault.ts';

const OUTLASTS = 'an edit told as saved, and the place of the window, outlast the end';

export const LIFE_FAULTS: readonly Fault[] = [
  {
    name: 'events never reach the page',
    bundle: 'main',
    changes: [['if (!contents.isDestroyed()) contents.send(IPC_EVENT, name, payload);', '']],
    caughtBy: 'a listener gets the payload alone',
    says: /the event book\.saved reaches the page/,
  },
  {
    name: 'progress never told',
    bundle: 'main',
    changes: [['if (!contents.isDestroyed())', 'if (!contents.isDestroyed() && name !== "job.progress")']],
    caughtBy: 'a plan is made with progress, in a worker, and the judge accepts it',
    says: /how often progress was told/,
  },
  {
    name: 'books not closed at the end',
    bundle: 'main',
    // Two changes: the book of a window that is gone is closed as well, and is at times faster than the end.
    changes: [
      ['[services.close(), placeKept()]', '[placeKept()]'],
      ['contents.on("destroyed", () => part(contents));', ''],
    ],
    caughtBy: OUTLASTS,
    says: /files of a book that was closed/,
  },
  {
    name: 'the place of the window not stored',
    bundle: 'main',
    changes: [['beforeLoad(window, keepPlace(window, placeFile));', 'beforeLoad(window, async () => void 0);']],
    caughtBy: OUTLASTS,
    says: /the place of the window/,
  },
  {
    name: 'the place of the window not taken up',
    bundle: 'main',
    changes: [['x: place.x,\n', '']],
    caughtBy: OUTLASTS,
    says: /the place of the window/,
  },
  {
    name: 'a window where no screen is',
    bundle: 'main',
    changes: [['parsed.success && isVisible(parsed.output, screens)', 'parsed.success']],
    caughtBy: OUTLASTS,
    says: /a place where no screen is/,
  },
  {
    name: 'books stay open for a page that is gone',
    bundle: 'main',
    changes: [['part(contents);\n\t\t\t\tgreet(contents);', '']],
    caughtBy: 'a page that is loaded anew is a new screen',
    says: /a session of the page before/,
  },
  {
    name: 'words of the command line passed over',
    bundle: 'main',
    changes: [['process.argv.slice(electron.app.isPackaged ? 1 : 2)', '[]']],
    caughtBy: 'a book named on the command line is opened',
    says: /a file was named on the command line/,
  },
  {
    name: 'a second start opens a second program',
    bundle: 'main',
    changes: [['if (electron.app.requestSingleInstanceLock())', 'if (true)']],
    caughtBy: 'a second start brings the window to the front and ends itself',
    says: /windows of the second start/,
  },
  {
    name: 'a second start changes nothing',
    bundle: 'main',
    changes: [['window?.focus();', '']],
    caughtBy: 'a second start brings the window to the front and ends itself',
    says: /the window in front/,
  },
];
