import type { CallName, InputOf, ResultOf } from '../../electron/contract/contract.ts';
import type { FileKind } from '../../electron/contract/files/kinds.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import type { ChosenFile, FilePurpose, TakenFile } from '../../electron/contract/files/purposes.ts';

/** What the Electron preload puts on `window.trotwell`. */
export interface Bridge {
  readonly calls: {
    readonly [N in CallName]: (input: InputOf<N>) => Promise<Answer<ResultOf<N>>>;
  };
  /** Opens the system's save dialogue. Resolves to true only when the file is written. */
  saveFile(fileName: string, base64: string, kind: FileKind): Promise<boolean>;
  /** Opens the system's dialogue for one file. Null: cancelled. */
  chooseFile(purpose: FilePurpose): Promise<Answer<TakenFile | null>>;
  /** Opens the system's dialogue for any number of files. None: cancelled. */
  chooseFiles(purpose: FilePurpose): Promise<Answer<readonly ChosenFile[]>>;
  /** Hands over a dropped file's content. */
  dropFile(name: string, bytes: Uint8Array, purpose: FilePurpose): Promise<Answer<TakenFile>>;
  /** Opens the system's save dialogue for a file the service made. True only when it is written. */
  saveProduced(token: string, name: string, purpose: FilePurpose): Promise<boolean>;
  /** Has main wait for what is handed over before the window closes; the last callback counts. */
  onLeave(handOver: () => Promise<void>): void;
}

declare global {
  interface Window {
    readonly trotwell?: Bridge;
  }
}
