import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import type { BrowserContext, CDPSession, Page, Route } from 'playwright-core';
import { toChromium, toProgram } from './addresses.ts';
import type { Shell } from './shell.ts';
import { strict } from './strict.ts';
import { FROM_MAIN, PAGE_SOURCE, PRELOAD_WORLD, preloadSource, TO_MAIN } from './worlds.ts';

export type FrameDouble = { readonly url: string; readonly parent: FrameDouble | null };
type OpenHandler = (details: { readonly url: string }) => { readonly action: 'deny' | 'allow' };
type Coded = {
  readonly t: string;
  readonly value?: unknown;
  readonly items?: readonly Coded[];
  readonly entries?: readonly [string, Coded][];
};
type FromPreload =
  | { readonly kind: 'invoke'; readonly id: number; readonly channel: string; readonly values: readonly Coded[] }
  | { readonly kind: 'ready' }
  | { readonly kind: 'broken'; readonly message: string };

/** The main process's side of one page of Chromium. */
export class WebContentsDouble extends EventEmitter {
  /** The page, for tests; there once the window is made. */
  readonly opened: Promise<Page>;
  /** Addresses for which a second window was asked for. */
  readonly refusedWindows: string[] = [];
  readonly #shell: Shell;
  readonly #preload: string | null;
  readonly #scripts: boolean;
  #page: Page | null = null;
  #session: CDPSession | null = null;
  #world: number | null = null;
  #openHandler: OpenHandler | null = null;
  #expected: string | null = null;
  #destroyed = false;
  readonly mainFrame: FrameDouble;
  /** What the program gets to see of this object. */
  readonly double: WebContentsDouble;

  constructor(
    shell: Shell,
    preload: string | null,
    scripts: boolean,
    size: { readonly width: number; readonly height: number },
  ) {
    super();
    this.double = strict('webContents', this);
    this.#shell = shell;
    this.#preload = preload;
    this.#scripts = scripts;
    const address = () => this.getURL();
    this.mainFrame = strict('WebFrameMain', {
      get url() {
        return address();
      },
      parent: null,
    });
    this.opened = this.#open(shell.context, size).catch((error: Error): Promise<Page> => {
      // A program that was abandoned runs on for a while; what it still tries never comes to an end.
      if (shell.hasEnded()) return new Promise(() => undefined);
      shell.trouble.report(error);
      throw error;
    });
    this.opened.catch(() => undefined);
  }

  async #open(context: BrowserContext, size: { readonly width: number; readonly height: number }): Promise<Page> {
    const page = await context.newPage();
    this.#page = page;
    await page.setViewportSize(size);
    const session = await context.newCDPSession(page);
    this.#session = session;
    session.on('Runtime.executionContextCreated', ({ context: world }) => {
      const { isDefault, frameId } = (world.auxData ?? {}) as { isDefault?: boolean; frameId?: string };
      if (world.name === PRELOAD_WORLD && !isDefault && frameId === this.#mainFrameId) this.#world = world.id;
    });
    session.on('Runtime.bindingCalled', ({ name, payload, executionContextId }) => {
      if (name === TO_MAIN) this.#hear(JSON.parse(payload) as FromPreload, executionContextId);
    });
    const { frameTree } = await session.send('Page.getFrameTree');
    this.#mainFrameId = frameTree.frame.id;
    await session.send('Page.enable');
    await session.send('Runtime.enable');
    if (!this.#scripts) await session.send('Emulation.setScriptExecutionDisabled', { value: true });
    if (this.#preload !== null) {
      await session.send('Runtime.addBinding', { name: TO_MAIN, executionContextName: PRELOAD_WORLD });
      await session.send('Page.addScriptToEvaluateOnNewDocument', { source: PAGE_SOURCE });
      const source = preloadSource(readFileSync(this.#preload, 'utf8'));
      await session.send('Page.addScriptToEvaluateOnNewDocument', { source, worldName: PRELOAD_WORLD });
    }
    await page.route('**/*', (route) => this.#answer(route, page).catch((error: Error) => this.#fail(route, error)));
    page.on('popup', (popup) => this.#secondWindow(popup));
    page.on('close', () => this.destroy());
    return page;
  }
  #mainFrameId = '';

  /** A route that could not be answered because the page has gone is no trouble. */
  #fail(route: Route, error: Error): void {
    if (this.#destroyed || this.#page?.isClosed()) return;
    this.#shell.trouble.report(error);
    void route.abort().catch(() => undefined);
  }

  async #answer(route: Route, page: Page): Promise<void> {
    const request = route.request();
    const address = toProgram(request.url(), this.#shell.schemes());
    const isMainFrame = request.frame() === page.mainFrame();
    if (request.isNavigationRequest() && isMainFrame) {
      if (this.#expected !== address && this.#isPrevented('will-navigate', address)) return route.abort('aborted');
      this.#expected = null;
      this.emit('did-start-navigation', {
        isMainFrame: true,
        isSameDocument: false,
        url: address,
        preventDefault: () => undefined,
      });
    }
    if (this.#shell.cancels(address, request.resourceType())) return route.abort('blockedbyclient');
    const response = await this.#shell.respond(address, request.method());
    if (response === null) return route.abort('failed');
    // From here on the old document may go at any moment; what no longer reaches it is no trouble.
    if (request.isNavigationRequest() && isMainFrame) this.#world = null;
    await route.fulfill({
      status: response.status,
      headers: Object.fromEntries(response.headers),
      body: Buffer.from(await response.arrayBuffer()),
    });
  }

  #isPrevented(name: string, address: string): boolean {
    let prevented = false;
    const preventDefault = (): void => {
      prevented = true;
    };
    this.emit(name, { preventDefault, url: address, isMainFrame: true, isSameDocument: false }, address);
    return prevented;
  }

  /** Chromium has opened it already; it is closed before it shows anything, and its requests go nowhere. */
  #secondWindow(popup: Page): void {
    const url = toProgram(popup.url(), this.#shell.schemes());
    if (this.#openHandler?.({ url }).action !== 'deny') {
      this.#shell.trouble.report(
        new Error(`a second window was let open for ${url}; the double has no second windows`),
      );
    }
    this.refusedWindows.push(url);
    void popup.close();
  }

  #hear(message: FromPreload, world: number): void {
    if (message.kind === 'ready') return;
    if (message.kind === 'broken') {
      this.#shell.trouble.report(new Error(`the preload script failed: ${message.message}`));
      return;
    }
    const event = { sender: this.double, senderFrame: this.mainFrame };
    const values = message.values.map(decode);
    const { id, channel } = message;
    this.#shell.invoke(channel, event, values).then(
      (value) => this.#tell(world, { kind: 'reply', id, ok: true, value: clonable(value) }),
      (error: Error) => {
        this.#shell.trouble.report(new Error(`the handler of ${channel} rejected: ${error.stack}`));
        return this.#tell(world, { kind: 'reply', id, channel, ok: false, message: error.message });
      },
    );
  }

  async #tell(world: number, message: object): Promise<void> {
    const expression = `window.${FROM_MAIN}(JSON.parse(${JSON.stringify(JSON.stringify(message))}))`;
    const told = await this.#session
      ?.send('Runtime.evaluate', { expression, contextId: world })
      .catch((error: Error) => {
        // The page may have gone on to another document, or have been closed.
        if (world === this.#world && !this.#destroyed && !this.#shell.hasEnded()) this.#shell.trouble.report(error);
      });
    // An exception in a listener of the preload script.
    if (told && told.exceptionDetails !== undefined) {
      this.#shell.trouble.report(
        new Error(`the preload script failed: ${told.exceptionDetails.exception?.description}`),
      );
    }
  }

  send(channel: string, ...values: readonly unknown[]): void {
    if (this.#destroyed) throw new Error('Object has been destroyed');
    if (this.#world !== null) void this.#tell(this.#world, { kind: 'send', channel, values: values.map(clonable) });
  }
  setWindowOpenHandler(handler: OpenHandler): void {
    this.#openHandler = handler;
  }
  getURL(): string {
    return this.#page === null ? '' : toProgram(this.#page.url(), this.#shell.schemes());
  }
  isDestroyed(): boolean {
    return this.#destroyed;
  }
  async loadURL(address: string): Promise<void> {
    const page = await this.opened;
    await this.#decidePermissions(page);
    this.#expected = address;
    await page.goto(toChromium(address, this.#shell.schemes())).catch((error: Error) => {
      if (this.#shell.hasEnded()) return new Promise(() => undefined);
      throw error;
    });
  }
  /** Has Chromium give its pages what the program's own handler gives, and deny the rest. */
  async #decidePermissions(page: Page): Promise<void> {
    const given = ['geolocation', 'notifications'].filter((name) => this.#shell.allows(name));
    await page.context().grantPermissions(given);
  }
  async printToPDF(options: {
    readonly preferCSSPageSize?: boolean;
    readonly printBackground?: boolean;
  }): Promise<Buffer> {
    const printed = await this.#session?.send('Page.printToPDF', { ...options });
    return Buffer.from(printed?.data ?? '', 'base64');
  }
  destroy(): void {
    if (this.#destroyed) return;
    this.#destroyed = true;
    this.emit('destroyed');
    void this.#page?.close().catch(() => undefined);
  }
}

/** Copies a value as Electron does between processes: functions and symbols do not pass. */
export function clonable(value: unknown): unknown {
  return structuredClone(value);
}

function decode(coded: Coded): unknown {
  switch (coded.t) {
    case 'undefined':
      return undefined;
    case 'value':
      return coded.value;
    case 'number':
      return Number(coded.value);
    case 'array':
      return (coded.items ?? []).map(decode);
    case 'object':
      return Object.fromEntries((coded.entries ?? []).map(([key, item]) => [key, decode(item)]));
    default:
      throw new Error('An object could not be cloned.');
  }
}
