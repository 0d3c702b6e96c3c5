import type { CallName, InputOf, ResultOf } from '../../electron/contract/contract.ts';
import type { FileKind } from '../../electron/contract/fileKinds.ts';
import type { Answer } from '../../electron/contract/errors.ts';

/** What the Electron preload puts on `window.trotwell`. */
export interface Bridge {
  readonly calls: {
    readonly [N in CallName]: (input: InputOf<N>) => Promise<Answer<ResultOf<N>>>;
  };
  /** Opens the system's save dialogue. Resolves to true only when the file is written. */
  saveFile(fileName: string, base64: string, kind: FileKind): Promise<boolean>;
}

declare global {
  interface Window {
    readonly trotwell?: Bridge;
  }
}
