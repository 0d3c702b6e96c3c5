import { session, type Session } from 'electron';
import { APP_ORIGIN } from './channels.ts';
import { isOurAddress } from './sender.ts';

/** Leads to our own scheme, where nothing of the kind lies. */
const NO_DICTIONARIES = `${APP_ORIGIN}/no-dictionaries/`;

/**
 * Confines every session from its first moment, and the default one, which may have been made before
 * anyone listened.
 */
export function confineSessions(app: Electron.App): void {
  app.on('session-created', confine);
  void app.whenReady().then(() => confine(session.defaultSession));
}

function confine(made: Session): void {
  withoutDictionaries(made);
  denyPermissions(made);
}

/**
 * On Windows and Linux a session fetches a spelling dictionary of the system's language from the
 * network, whether a window checks its spelling or not, and keeps its languages from one start to
 * the next: so there are none, at every start, and an address of our own should one be asked for.
 */
function withoutDictionaries(made: Session): void {
  made.setSpellCheckerDictionaryDownloadURL(NO_DICTIONARIES);
  made.setSpellCheckerLanguages([]);
  made.setSpellCheckerEnabled(false);
}

/**
 * Denies every permission but one: our own page may put plain text into the clipboard. The program
 * needs no camera, place, notification or device.
 */
function denyPermissions(made: Session): void {
  made.setPermissionRequestHandler((_contents, permission, decide, details) =>
    decide(isOurCopying(permission, details.requestingUrl, details.isMainFrame)),
  );
  made.setPermissionCheckHandler((_contents, permission, origin, details) =>
    isOurCopying(permission, origin, details.isMainFrame),
  );
  made.setDevicePermissionHandler(() => false);
}

function isOurCopying(permission: string, address: string, isMainFrame: boolean): boolean {
  return permission === 'clipboard-sanitized-write' && isMainFrame && isOurAddress(address);
}
