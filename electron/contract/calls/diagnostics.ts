import { call, nothing } from './call.ts';

export const diagnosticsCalls = {
  /** Versions, counts, sizes and the state of the file as plain text; no word of any record. */
  'app/diagnostics': call<string>()(nothing),
} as const;
