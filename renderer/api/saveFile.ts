import { FILE_KINDS, type FileKind } from '../../electron/contract/files/kinds.ts';
import { download } from './download.ts';

/** Turns the base64 text of an answer into bytes. */
export function bytesFromBase64(base64: string): Uint8Array<ArrayBuffer> {
  const raw = atob(base64);
  const bytes = new Uint8Array(raw.length);
  for (let i = 0; i < raw.length; i++) bytes[i] = raw.charCodeAt(i);
  return bytes;
}

/** Turns bytes into the base64 text a call carries. */
export function base64FromBytes(bytes: Uint8Array): string {
  let raw = '';
  for (const byte of bytes) raw += String.fromCharCode(byte);
  return btoa(raw);
}

/** What became of a file that was handed to the practitioner. */
export type Saving =
  /** It lies where the practitioner chose. */
  | 'saved'
  /** The browser has it, and keeps where it put it to itself. */
  | 'handed over'
  /** The practitioner cancelled, or was told why it could not be written. */
  | 'not saved'
  /** It ended on its way to the browser, or the browser has no room for it; it is still kept. */
  | 'broken off'
  /** The service no longer has it. */
  | 'gone';

/** True where the same file can be handed over once more. */
export const canBeTriedAgain = (saving: Saving): boolean =>
  saving === 'not saved' || saving === 'broken off';

/** Hands a file to the practitioner: the system's save dialogue in Electron, a download elsewhere. */
export async function saveFile(fileName: string, base64: string, kind: FileKind): Promise<Saving> {
  if (window.trotwell !== undefined) {
    return (await window.trotwell.saveFile(fileName, base64, kind)) ? 'saved' : 'not saved';
  }
  const { mediaType } = FILE_KINDS[kind];
  download(new Blob([bytesFromBase64(base64)], { type: mediaType }), fileName);
  return 'handed over';
}

/** Hands a PDF to the practitioner. */
export function savePdf(fileName: string, base64: string): Promise<Saving> {
  return saveFile(fileName, base64, 'pdf');
}

/** What the page says of it. */
export function savingSentence(fileName: string, saving: Saving): string {
  if (saving === 'saved') return `${fileName} is saved.`;
  if (saving === 'handed over') return `${fileName} is handed over for saving.`;
  if (saving === 'gone') return `${fileName} is no longer kept. Make it again.`;
  if (saving === 'not saved') return `${fileName} was not saved.`;
  return `${fileName} did not arrive whole, so nothing was saved: the connection ended, or the browser has no room for it. It is still kept here; make room, then save it again.`;
}
