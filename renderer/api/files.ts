import {
  FILE_PURPOSES,
  tooLargeSentence,
  type FilePurpose,
  type TakenFile,
} from '../../electron/contract/files/purposes.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import type { Bridge } from './bridge.ts';
import { download } from './download.ts';
import type { LoopbackOptions } from './loopbackTransport.ts';
import type { Saving } from './saveFile.ts';
import { NO_ANSWER, unreachable } from './unreachable.ts';

/** A file at hand: its name, and how it gets to the service. */
export interface FileAtHand {
  readonly name: string;
  take(): Promise<Answer<TakenFile>>;
}

/** How files come and go: the page sees names, sizes and tokens, and never a path. */
export interface FileWays {
  /** Lets the practitioner choose a file and hands it to the service. Null: cancelled. */
  chooseFile(purpose: FilePurpose): Promise<Answer<TakenFile | null>>;
  /** Lets the practitioner choose any number of files. None: cancelled. */
  chooseFiles(purpose: FilePurpose): Promise<Answer<readonly FileAtHand[]>>;
  /** Hands a dropped file to the service. */
  sendFile(file: File, purpose: FilePurpose): Promise<Answer<TakenFile>>;
  /** Hands a file the service made to the practitioner: the system's dialogue, or a download. */
  saveProduced(token: string, name: string, purpose: FilePurpose): Promise<Saving>;
}

/** Files by way of the Electron preload. */
export function electronFiles(bridge: Bridge): FileWays {
  return {
    chooseFile: (purpose) => bridge.chooseFile(purpose).catch(() => unreachable(NO_ANSWER)),
    async chooseFiles(purpose) {
      try {
        const chosen = await bridge.chooseFiles(purpose);
        if (!chosen.ok) return chosen;
        const files = chosen.value.map(({ name, taken }) => ({ name, take: async () => taken }));
        return { ok: true, value: files };
      } catch {
        return unreachable(NO_ANSWER);
      }
    },
    async sendFile(file, purpose) {
      const refused = tooLarge(file, purpose);
      if (refused !== null) return refused;
      try {
        const bytes = new Uint8Array(await file.arrayBuffer());
        return await bridge.dropFile(file.name, bytes, purpose);
      } catch {
        return unreadable();
      }
    },
    async saveProduced(token, name, purpose) {
      return (await bridge.saveProduced(token, name, purpose)) ? 'saved' : 'not saved';
    },
  };
}

/** Files over the loopback host that served this page. */
export function loopbackFiles({ key, onRefusedKey }: LoopbackOptions): FileWays {
  const authorization = `Bearer ${key ?? ''}`;

  async function sendFile(file: File, purpose: FilePurpose): Promise<Answer<TakenFile>> {
    const refused = tooLarge(file, purpose);
    if (refused !== null) return refused;
    try {
      const response = await fetch('/files/in', {
        method: 'POST',
        headers: {
          authorization,
          'content-type': 'application/octet-stream',
          'trotwell-purpose': purpose,
          'trotwell-file-name': encodeURIComponent(file.name.toWellFormed()),
        },
        body: file,
      });
      if (response.status === 401) onRefusedKey();
      return (await response.json()) as Answer<TakenFile>;
    } catch {
      return unreadable();
    }
  }

  return {
    sendFile,
    async chooseFile(purpose) {
      const [file] = await filesFromDialogue(purpose);
      return file === undefined ? { ok: true, value: null } : sendFile(file, purpose);
    },
    async chooseFiles(purpose) {
      const files = await filesFromDialogue(purpose, true);
      const atHand = files.map((file) => ({
        name: file.name,
        take: () => sendFile(file, purpose),
      }));
      return { ok: true, value: atHand };
    },
    async saveProduced(token, name) {
      try {
        const response = await fetch(`/files/out/${token}`, { headers: { authorization } });
        if (response.status === 401) onRefusedKey();
        if (response.status === 404) return 'gone';
        if (!response.ok) return 'broken off';
        download(await response.blob(), name);
        return 'handed over';
      } catch {
        return 'broken off';
      }
    },
  };
}

/** Said before a byte is sent: a host that refuses halfway can only hang up. */
function tooLarge(file: File, purpose: FilePurpose): Answer<never> | null {
  const { maxBytes } = FILE_PURPOSES[purpose];
  if (file.size <= maxBytes) return null;
  const message = tooLargeSentence(maxBytes);
  return { ok: false, error: { kind: 'input', message, fields: [{ path: 'file', message }] } };
}

/** The file was moved since it was chosen, or the service is gone; a page cannot tell which. */
function unreadable(): Answer<never> {
  return unreachable('The file could not be read or handed over. Choose it again.');
}

/** The browser's own dialogue. Opens from a press of a button, by keyboard as by pointer. */
function filesFromDialogue(purpose: FilePurpose, several = false): Promise<readonly File[]> {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = several;
  input.accept = FILE_PURPOSES[purpose].extensions.map((ending) => `.${ending}`).join(',');
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve([...(input.files ?? [])]));
    input.addEventListener('cancel', () => resolve([]));
    input.click();
  });
}
