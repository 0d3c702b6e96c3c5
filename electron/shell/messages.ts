import type { Answer } from '../contract/errors.ts';

/** Handed to the utility process as its last argument, in JSON. */
export interface ServiceSettings {
  readonly folder: string;
  readonly fontsFolder: string;
  readonly version: string;
}

export type ToService =
  | { readonly kind: 'call'; readonly id: number; readonly name: string; readonly input: unknown }
  | { readonly kind: 'close' };

export interface FromService {
  readonly id: number;
  readonly answer: Answer<unknown>;
}
