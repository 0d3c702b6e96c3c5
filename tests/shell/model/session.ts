import type { App } from './app.ts';
import type { Seen } from './seen.ts';

type RequestHandler = (
  contents: unknown,
  permission: string,
  decide: (granted: boolean) => void,
  details: { requestingUrl: string; isMainFrame: boolean },
) => void;
type CheckHandler = (
  contents: unknown,
  permission: string,
  origin: string,
  details: { isMainFrame: boolean },
) => boolean;

/**
 * The one session. It is made when it is first asked for or a window needs it, told of by
 * `session-created`, and then fetches what its spelling checker lacks, but for macOS, whose own
 * checker is used. Without a handler a permission is granted.
 */
export class ModelSession {
  private languages = ['en-US'];
  private dictionaries = 'https://dictionaries.example/';
  private request: RequestHandler | null = null;
  private check: CheckHandler | null = null;
  private device: ((details: unknown) => boolean) | null = null;

  setSpellCheckerLanguages(languages: string[]): void {
    this.languages = languages;
  }
  setSpellCheckerDictionaryDownloadURL(url: string): void {
    if (!new URL(url).href.endsWith('/')) throw new TypeError('The address must end in a slash');
    this.dictionaries = url;
  }
  setSpellCheckerEnabled(): void {
    // Switches the checker of pages, not what the session fetches.
  }
  setPermissionRequestHandler(handler: RequestHandler): void {
    this.request = handler;
  }
  setPermissionCheckHandler(handler: CheckHandler): void {
    this.check = handler;
  }
  setDevicePermissionHandler(handler: (details: unknown) => boolean): void {
    this.device = handler;
  }

  /** What the session fetches as it begins. */
  fetched(): string[] {
    return this.languages.map((language) => `${this.dictionaries}${language}.bdic`);
  }
  /** How a page fares that asks for something: looked up, asked for, and a device. */
  async permission(kind: string, url: string, isMainFrame = true) {
    const asked = await new Promise<boolean>((resolve) => {
      if (this.request === null) resolve(true);
      else this.request(null, kind, resolve, { requestingUrl: url, isMainFrame });
    });
    const origin = `${url.split('/', 3).join('/')}/`;
    return {
      request: asked,
      check: this.check?.(null, kind, origin, { isMainFrame }) ?? true,
      device: this.device?.({ deviceType: kind }) ?? true,
    };
  }
}

export function sessionsOf(seen: Seen, app: App, platform: NodeJS.Platform) {
  let made: ModelSession | null = null;
  function make(): ModelSession {
    app.demand(true, 'A session');
    if (made !== null) return made;
    made = new ModelSession();
    app.emit('session-created', made);
    if (platform !== 'darwin') seen.network.push(...made.fetched());
    return made;
  }
  const module = {
    get defaultSession(): ModelSession {
      return make();
    },
  };
  return { make, module };
}
