import type { AppDouble } from './app.ts';
import { onlyKnown, strict } from './strict.ts';

type Handler = (event: unknown, ...values: readonly unknown[]) => unknown;
type ProtocolHandler = (request: Request) => Promise<Response> | Response;
type PermissionRequest = (contents: unknown, permission: string, decide: (allowed: boolean) => void) => void;
type PermissionCheck = (contents: unknown, permission: string) => boolean;
type BeforeRequest = (
  details: { readonly url: string; readonly resourceType: string },
  decide: (answer: { readonly cancel?: boolean }) => void,
) => void;
type SavedAnswer = { readonly canceled: boolean; readonly filePaths?: readonly string[]; readonly filePath?: string };

/** ipcMain. */
export class IpcDouble {
  readonly handlers = new Map<string, Handler>();
  /** What the pages sent, for tests. */
  readonly calls: { readonly channel: string; readonly values: readonly unknown[] }[] = [];
  handle(channel: string, handler: Handler): void {
    if (this.handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    this.handlers.set(channel, handler);
  }
}

/** protocol. */
export class ProtocolDouble {
  readonly handlers = new Map<string, ProtocolHandler>();
  readonly declared = new Map<string, Readonly<Record<string, boolean>>>();
  readonly #app: AppDouble;
  constructor(app: AppDouble) {
    this.#app = app;
  }
  registerSchemesAsPrivileged(
    schemes: readonly { readonly scheme: string; readonly privileges?: Readonly<Record<string, boolean>> }[],
  ): void {
    if (this.#app.isReady())
      throw new Error('protocol.registerSchemesAsPrivileged should be called before app is ready');
    for (const { scheme, privileges } of schemes) this.declared.set(scheme, privileges ?? {});
  }
  handle(scheme: string, handler: ProtocolHandler): void {
    if (!this.#app.isReady()) throw new Error('protocol.handle can only be used after app is ready');
    if (this.handlers.has(scheme)) throw new Error(`the scheme ${scheme} has a handler already`);
    this.handlers.set(scheme, handler);
  }
}

/** session.defaultSession. */
export class SessionDouble {
  permissionRequest: PermissionRequest | null = null;
  permissionCheck: PermissionCheck | null = null;
  beforeRequest: BeforeRequest | null = null;
  readonly webRequest = strict('webRequest', {
    onBeforeRequest: (handler: BeforeRequest): void => {
      this.beforeRequest = handler;
    },
  });
  setPermissionRequestHandler(handler: PermissionRequest): void {
    this.permissionRequest = handler;
  }
  setPermissionCheckHandler(handler: PermissionCheck): void {
    this.permissionCheck = handler;
  }
  cancels(url: string, resourceType: string): boolean {
    let cancel = false;
    this.beforeRequest?.({ url, resourceType }, (answer) => {
      cancel = answer.cancel ?? false;
    });
    return cancel;
  }
}

/** dialog: a test gives the answers beforehand; a dialog without one throws. */
export class DialogDouble {
  readonly answers: SavedAnswer[] = [];
  readonly asked: { readonly kind: string; readonly options: Readonly<Record<string, unknown>> }[] = [];
  #next(kind: string, options: Readonly<Record<string, unknown>>): SavedAnswer {
    onlyKnown(kind, options, ['title', 'properties', 'filters', 'defaultPath']);
    this.asked.push({ kind, options });
    const answer = this.answers.shift();
    if (answer === undefined) throw new Error(`the double has no answer to ${kind}`);
    return answer;
  }
  async showOpenDialog(_window: unknown, options: Readonly<Record<string, unknown>>): Promise<SavedAnswer> {
    return { filePaths: [], ...this.#next('showOpenDialog', options) };
  }
  async showSaveDialog(_window: unknown, options: Readonly<Record<string, unknown>>): Promise<SavedAnswer> {
    return { filePath: '', ...this.#next('showSaveDialog', options) };
  }
}

type MenuItem = {
  readonly role?: string;
  readonly label?: string;
  readonly type?: string;
  readonly submenu?: readonly MenuItem[];
};
const ROLES = [
  'appMenu',
  'close',
  'quit',
  'cut',
  'copy',
  'paste',
  'selectAll',
  'reload',
  'resetZoom',
  'zoomIn',
  'zoomOut',
  'togglefullscreen',
];

/** Menu. */
export class MenuDouble {
  application: readonly MenuItem[] | null = null;
  buildFromTemplate(template: readonly MenuItem[]): readonly MenuItem[] {
    for (const item of template) {
      onlyKnown('a menu item', item, ['role', 'label', 'type', 'submenu']);
      if (item.role !== undefined && !ROLES.includes(item.role))
        throw new Error(`the double has no menu role ${item.role}`);
      this.buildFromTemplate(item.submenu ?? []);
    }
    return template;
  }
  setApplicationMenu(menu: readonly MenuItem[]): void {
    this.application = menu;
  }
}

/** screen. */
export const SCREEN = { x: 0, y: 0, width: 1920, height: 1040 };
