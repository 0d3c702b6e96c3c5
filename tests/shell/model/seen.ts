import type { EventEmitter } from 'node:events';

/** What a scenario sets before the start, and what the practitioner and the system "do" later. */
export interface Setting {
  readonly platform?: NodeJS.Platform;
  readonly packaged?: boolean;
  /** The answers to each asking for the lock; the last one stays. */
  readonly locks?: readonly boolean[];
  readonly switches?: readonly string[];
  readonly workArea?: { readonly width: number; readonly height: number };
  /** The folder of the program. */
  readonly appPath: string;
  /** Makes the child of a utility process, which speaks by `message` events and `postMessage`. */
  fork(entry: string, args: readonly string[]): UtilityChild;
}

export interface UtilityChild extends EventEmitter {
  postMessage(message: unknown): void;
  kill(): boolean;
}

export interface Frame {
  readonly url: string;
  readonly parent: unknown;
}

/** What the model has seen, and what a scenario makes of it next. */
export function newSeen() {
  return {
    /** Everything that happened to the application, in order. */
    order: [] as string[],
    handlers: new Map<string, (event: unknown, ...args: unknown[]) => unknown>(),
    // eslint-disable-next-line @typescript-eslint/no-explicit-any -- windows, played by scenarios
    windows: [] as any[],
    /** Every address a window was led to. */
    addresses: [] as string[],
    /** Every address the program itself went to on a network. */
    network: [] as string[],
    paths: {} as Record<string, string>,
    // eslint-disable-next-line @typescript-eslint/no-explicit-any -- as the shell hands it over
    schemes: [] as any[],
    scheme: null as null | { name: string; handler: (request: { url: string }) => unknown },
    sandboxed: false,
    lockAsked: 0,
    quit: false,
    exitCode: null as number | null,
    relaunched: [] as unknown[],
    // eslint-disable-next-line @typescript-eslint/no-explicit-any -- templates, as handed over
    menu: null as any,
    // eslint-disable-next-line @typescript-eslint/no-explicit-any -- templates, as handed over
    popups: [] as any[],
    opened: [] as string[],
    messages: [] as string[],
    details: [] as (string | undefined)[],
    /** What Linux writes to the terminal in place of a box, before the application is ready. */
    stderr: [] as string[],
    suggested: [] as (string | undefined)[],
    filters: [] as unknown[],
    openFilters: null as unknown,
    /** Where the practitioner "chooses" to save; null for a cancelled dialogue. */
    saveTo: null as string | null,
    /** The file the practitioner "chooses"; null for a cancelled dialogue. */
    chosen: null as string | readonly string[] | null,
    /** The button the practitioner presses. */
    pressed: 0,
    /** The frame that the page's next invocation comes from. */
    senderFrame: { url: 'trotwell://app/index.html', parent: null } as Frame | null,
    // eslint-disable-next-line @typescript-eslint/no-explicit-any -- the page's side of the bridge
    bridge: null as any,
    invoked: null as null | { channel: string; words: number },
    fork: null as null | { entry: string; args: readonly string[]; options: unknown },
    serviceProcess: null as UtilityChild | null,
  };
}

export type Seen = ReturnType<typeof newSeen>;
