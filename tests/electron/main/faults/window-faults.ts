import type { Fault } from './fault.ts';

/** What a window may be given by mistake. The double has none of it and says so, at once. */
const LOOSE_WINDOW: readonly Fault[] = [
  {
    name: 'context isolation off',
    bundle: 'main',
    changes: [
      ['preload: preloadFile,\n\t\tcontextIsolation: true', 'preload: preloadFile,\n\t\tcontextIsolation: false'],
    ],
    caughtBy: 'start',
    says: /webPreferences\.contextIsolation = false/,
  },
  {
    name: 'sandbox of the window off',
    bundle: 'main',
    changes: [['sandbox: true,\n\t\tnodeIntegration: false', 'sandbox: false,\n\t\tnodeIntegration: false']],
    caughtBy: 'start',
    says: /webPreferences\.sandbox = false/,
  },
  {
    name: 'Node in the page',
    bundle: 'main',
    changes: [
      [
        'nodeIntegration: false,\n\t\tnodeIntegrationInSubFrames',
        'nodeIntegration: true,\n\t\tnodeIntegrationInSubFrames',
      ],
    ],
    caughtBy: 'start',
    says: /webPreferences\.nodeIntegration = true/,
  },
  {
    name: 'web security off',
    bundle: 'main',
    changes: [['webSecurity: true', 'webSecurity: false']],
    caughtBy: 'start',
    says: /webPreferences\.webSecurity = false/,
  },
  {
    name: 'developer tools in the menu',
    bundle: 'main',
    changes: [['{ role: "togglefullscreen" }', '{ role: "toggleDevTools" }']],
    caughtBy: 'start',
    says: /no menu role toggleDevTools/,
  },
];

const START: readonly Fault[] = [
  {
    name: 'the main process rejects at its start',
    bundle: 'main',
    changes: [
      ['await electron.app.whenReady();', 'await electron.app.whenReady(); throw new Error("planted in main");'],
    ],
    caughtBy: 'start',
    says: /planted in main/,
  },
  {
    name: 'the preload script throws',
    bundle: 'preload',
    changes: [
      [
        'electron.contextBridge.exposeInMainWorld("swardway"',
        'throw new Error("planted in preload");\n(void 0)("swardway"',
      ],
    ],
    caughtBy: 'start',
    says: /the preload script failed: Error: planted in preload/,
  },
  {
    name: 'the preload script wants a module of Node',
    bundle: 'preload',
    changes: [
      [
        'electron.contextBridge.exposeInMainWorld("swardway"',
        'require("node:fs");\nelectron.contextBridge.exposeInMainWorld("swardway"',
      ],
    ],
    caughtBy: 'start',
    says: /a sandboxed preload may not load node:fs/,
  },
  {
    name: 'the screens are not served',
    bundle: 'main',
    changes: [['electron.protocol.handle("app", async', '((_scheme, _handler) => void 0)("app", async']],
    caughtBy: 'start',
    says: /net::ERR_FAILED/,
  },
  {
    name: 'the scheme is declared too late',
    bundle: 'main',
    changes: [
      ['electron.app.enableSandbox();\ndeclareScheme();', 'electron.app.enableSandbox();'],
      ['await electron.app.whenReady();', 'await electron.app.whenReady(); declareScheme();'],
    ],
    caughtBy: 'start',
    says: /before app is ready/,
  },
  {
    name: 'the window is never shown',
    bundle: 'main',
    changes: [['window.once("ready-to-show", () => window.show());', '']],
    caughtBy: 'start',
    says: /no window was shown/,
  },
];

const SETTINGS: readonly Fault[] = [
  {
    name: 'sandbox of the program not asked for',
    bundle: 'main',
    changes: [['electron.app.enableSandbox();', '']],
    caughtBy: 'every guard of a window is on',
    says: /the sandbox of the whole program/,
  },
  {
    name: 'a guard of the window left out',
    bundle: 'main',
    changes: [['webviewTag: false,', '']],
    caughtBy: 'every guard of a window is on',
    says: /to deeply equal/,
  },
  {
    name: 'the scheme is not secure',
    bundle: 'main',
    changes: [['standard: true,\n\t\t\tsecure: true', 'standard: true,\n\t\t\tsecure: false']],
    caughtBy: 'its scheme is declared standard and secure',
    says: /to deeply equal/,
  },
  {
    name: 'a printed sheet may run scripts',
    bundle: 'main',
    changes: [['javascript: false', 'javascript: true']],
    caughtBy: 'a sheet is printed where no script runs',
    says: /to deeply equal/,
  },
];

export const WINDOW_FAULTS: readonly Fault[] = [...LOOSE_WINDOW, ...START, ...SETTINGS];
