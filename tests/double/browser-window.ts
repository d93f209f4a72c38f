import { EventEmitter } from 'node:events';
import type { Shell } from './shell.ts';
import { onlyKnown, strict } from './strict.ts';
import { WebContentsDouble } from './web-contents.ts';

type Bounds = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
export type WindowOptions = Partial<Bounds> & {
  readonly show?: boolean;
  readonly webPreferences?: Readonly<Record<string, unknown>> & {
    readonly preload?: string;
    readonly javascript?: boolean;
  };
};

const KNOWN_OPTIONS = [
  'title',
  'width',
  'height',
  'x',
  'y',
  'minWidth',
  'minHeight',
  'show',
  'backgroundColor',
  'webPreferences',
];
/** Preferences that the double heeds, or that must have the one value it can stand in for. */
const KNOWN_PREFERENCES: Readonly<Record<string, readonly unknown[]>> = {
  preload: [],
  javascript: [true, false],
  contextIsolation: [true],
  sandbox: [true],
  nodeIntegration: [false],
  nodeIntegrationInSubFrames: [false],
  nodeIntegrationInWorker: [false],
  webSecurity: [true],
  allowRunningInsecureContent: [false],
  experimentalFeatures: [false],
  webviewTag: [false],
  navigateOnDragDrop: [false],
};

function checkPreferences(preferences: Readonly<Record<string, unknown>>): void {
  onlyKnown('webPreferences', preferences, Object.keys(KNOWN_PREFERENCES));
  for (const [name, value] of Object.entries(preferences)) {
    const values = KNOWN_PREFERENCES[name] ?? [];
    if (values.length > 0 && !values.includes(value))
      throw new Error(`the double has no webPreferences.${name} = ${value}`);
  }
}

/** A window that is a page of Chromium. It has a place and a state, but no frame. */
export class WindowDouble extends EventEmitter {
  readonly webContents: WebContentsDouble;
  readonly options: WindowOptions;
  /** What the program gets to see of this object. */
  readonly double: WindowDouble;
  readonly #windows: Set<WindowDouble>;
  #bounds: Bounds;
  #shown: boolean;
  #maximized = false;
  #minimized = false;
  #focused = 0;
  #ready = false;

  constructor(
    shell: Shell,
    windows: Set<WindowDouble>,
    options: WindowOptions,
    onContents: (contents: WebContentsDouble) => void,
  ) {
    super();
    this.double = strict('BrowserWindow', this);
    onlyKnown('BrowserWindow', options, KNOWN_OPTIONS);
    checkPreferences(options.webPreferences ?? {});
    this.options = options;
    this.#windows = windows;
    this.#bounds = { x: options.x ?? 0, y: options.y ?? 0, width: options.width ?? 800, height: options.height ?? 600 };
    this.#shown = options.show ?? true;
    const { preload, javascript } = options.webPreferences ?? {};
    this.webContents = new WebContentsDouble(shell, preload ?? null, javascript ?? true, this.#bounds).double;
    this.webContents.once('destroyed', () => this.destroy());
    windows.add(this);
    onContents(this.webContents);
  }

  async loadURL(address: string): Promise<void> {
    await this.webContents.loadURL(address);
    this.#ready = true;
    this.emit('ready-to-show');
  }
  /** Whether its page has been loaded; for tests. */
  isReady(): boolean {
    return this.#ready;
  }
  show(): void {
    this.#shown = true;
  }
  isVisible(): boolean {
    return this.#shown;
  }
  maximize(): void {
    this.#maximized = true;
  }
  isMaximized(): boolean {
    return this.#maximized;
  }
  minimize(): void {
    this.#minimized = true;
  }
  isMinimized(): boolean {
    return this.#minimized;
  }
  restore(): void {
    this.#minimized = false;
  }
  focus(): void {
    this.#focused += 1;
  }
  /** How often the program asked for the focus; for tests. */
  timesFocused(): number {
    return this.#focused;
  }
  setBounds(bounds: Bounds): void {
    this.#bounds = bounds;
  }
  getNormalBounds(): Bounds {
    return this.#bounds;
  }
  close(): void {
    let prevented = false;
    this.emit('close', {
      preventDefault: () => {
        prevented = true;
      },
    });
    if (!prevented) this.destroy();
  }
  destroy(): void {
    if (!this.#windows.delete(this)) return;
    this.webContents.destroy();
    this.emit('closed');
  }
}
