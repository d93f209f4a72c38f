import type { Fault } from './fault.ts';

const AWAY: readonly Fault[] = [
  {
    name: 'navigation allowed',
    bundle: 'main',
    changes: [['contents.on("will-navigate", stay);', '']],
    caughtBy: 'the page does not go elsewhere',
    says: /a way out is refused/,
  },
  {
    name: 'redirects allowed',
    bundle: 'main',
    changes: [['contents.on("will-redirect", stay);', '']],
    caughtBy: 'a redirect to elsewhere is refused',
    says: /will-redirect/,
  },
  {
    name: 'addresses compared by how they begin',
    bundle: 'main',
    changes: [['return protocol === `app:` && host === "swardway";', 'return address.startsWith("app://swardway");']],
    caughtBy: 'a redirect to elsewhere is refused',
    says: /will-redirect/,
  },
  {
    name: 'new windows allowed',
    bundle: 'main',
    changes: [['return { action: "deny" };', 'return { action: "allow" };']],
    caughtBy: 'no second window opens',
    says: /a second window was let open/,
  },
  {
    name: 'new windows not decided on',
    bundle: 'main',
    changes: [['contents.setWindowOpenHandler((', '((_decide) => void 0)((']],
    caughtBy: 'no second window opens',
    says: /a second window was let open/,
  },
  {
    name: 'guest pages allowed',
    bundle: 'main',
    changes: [['contents.on("will-attach-webview", (event) => event.preventDefault());', '']],
    caughtBy: 'a guest page is refused',
    says: /a guest page is refused/,
  },
  {
    name: 'a permission given when asked for',
    bundle: 'main',
    changes: [['decide(ALLOWED_PERMISSIONS.includes(permission))', 'decide(true)']],
    caughtBy: 'permissions are decided by a short list',
    says: /the permission geolocation/,
  },
  {
    name: 'a permission given when looked up',
    bundle: 'main',
    changes: [['(_contents, permission) => ALLOWED_PERMISSIONS.includes(permission)', '() => true']],
    caughtBy: 'permissions are refused',
    says: /permissions that the page has/,
  },
  {
    name: 'permissions not decided on',
    bundle: 'main',
    changes: [['session.setPermissionCheckHandler(', '((_decide) => void 0)(']],
    caughtBy: 'permissions are refused',
    says: /permissions that the page has/,
  },
  {
    name: 'requests may leave the machine',
    bundle: 'main',
    changes: [['cancel: !LOCAL_SCHEMES.includes(schemeOf(details.url))', 'cancel: false']],
    caughtBy: 'requests that would leave the machine are stopped',
    says: /a request to .* is stopped/,
  },
];

const FILES: readonly Fault[] = [
  {
    name: 'no policy',
    bundle: 'main',
    changes: [['"Content-Security-Policy": policy,', '']],
    caughtBy: 'scripts come only from the program',
    says: /injected": true|injected: true/,
  },
  {
    name: 'a policy that lets text run as a script',
    bundle: 'main',
    changes: [[`"script-src 'self'"`, `"script-src 'self' 'unsafe-inline'"`]],
    caughtBy: 'files come with the policy, and only from the folder of the screens',
    says: /script-src/,
  },
  {
    // Either guard alone holds: both have to go before anything can be seen.
    name: 'paths that climb out of the folder',
    bundle: 'main',
    changes: [
      ['|| name.includes("\\\\") || name.split("/").includes("..") ? null : name', '? null : name'],
      ['if (!real.startsWith(inside + node_path.default.sep)) return null;', ''],
    ],
    caughtBy: 'files come with the policy, and only from the folder of the screens',
    says: /package\.json/,
  },
  {
    name: 'every host of the scheme is served',
    bundle: 'main',
    changes: [['if (!isOwnPage(request.url) || request.method !== "GET") return notFound();', '']],
    caughtBy: 'nothing but the screens is served, however it is asked for',
    says: /GET app:\/\/elsewhere/,
  },
];

const CALLS: readonly Fault[] = [
  {
    name: 'the frame that calls is not looked at',
    bundle: 'main',
    changes: [['frame === event.sender.mainFrame && isOwnPage(frame.url)', 'isOwnPage(frame.url)']],
    caughtBy: 'a call counts only from the window itself',
    says: /a call of a frame inside it/,
  },
  {
    name: 'the address of the frame that calls is not looked at',
    bundle: 'main',
    changes: [['frame !== null && frame === event.sender.mainFrame && isOwnPage(frame.url)', 'true']],
    caughtBy: 'a call counts only from the window itself',
    says: /a call of a frame inside it/,
  },
  {
    name: 'what is in a request is not looked at',
    bundle: 'main',
    changes: [
      [
        'if (!checked.success) return invalidRequest(channel, checked.issues[0]);',
        'if (!checked.success) checked.output = request;',
      ],
    ],
    caughtBy: 'only requests of the contract are answered',
    says: /request-invalid/,
  },
  {
    name: 'any channel leaves the preload script',
    bundle: 'preload',
    changes: [['if (isChannelName(name)) return', 'if (name) return']],
    caughtBy: 'a call of an unknown channel stays in the preload script',
    says: /channels that reached the main process/,
  },
  {
    name: 'ipcRenderer given to the page',
    bundle: 'preload',
    changes: [
      [
        'electron.contextBridge.exposeInMainWorld("swardway"',
        'electron.contextBridge.exposeInMainWorld("ipcRenderer", electron.ipcRenderer);\nelectron.contextBridge.exposeInMainWorld("swardway"',
      ],
    ],
    caughtBy: 'nothing of Electron or Node in the page',
    says: /ipcRenderer/,
  },
  {
    name: 'a free way to call given to the page',
    bundle: 'preload',
    changes: [['\tcall,\n\ton\n', '\tcall,\n\ton,\n\tinvoke: (...values) => electron.ipcRenderer.invoke(...values)\n']],
    caughtBy: 'nothing of Electron or Node in the page',
    says: /invoke/,
  },
  {
    name: 'the event object given to listeners',
    bundle: 'preload',
    changes: [
      ['?? []) listener(payload)', '?? []) listener(payload, _event)'],
      ['const listener = (payload) => handler(payload);', 'const listener = (...values) => handler(...values);'],
    ],
    caughtBy: 'a listener gets the payload alone',
    says: /to deeply equal/,
  },
];

export const GUARD_FAULTS: readonly Fault[] = [...AWAY, ...FILES, ...CALLS];
