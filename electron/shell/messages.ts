import type { Answer } from '../contract/errors.ts';

/** Handed to the utility process as its last argument, in JSON. */
export interface ServiceSettings {
  readonly folder: string;
  readonly fontsFolder: string;
  readonly version: string;
}

export type ToService =
  | { readonly kind: 'call'; readonly id: number; readonly name: string; readonly input: unknown }
  /** A file to take in: the path chosen in the system's dialogue, or a dropped file's bytes. */
  | {
      readonly kind: 'take-in';
      readonly id: number;
      readonly name: string;
      readonly from: string | Uint8Array;
      readonly maxBytes: number;
    }
  /** A file to write to the path chosen in the system's dialogue. */
  | {
      readonly kind: 'write-out';
      readonly id: number;
      readonly token: string;
      readonly path: string;
    }
  | { readonly kind: 'close' };

export interface FromService {
  readonly id: number;
  readonly answer: Answer<unknown>;
}
