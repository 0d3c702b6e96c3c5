import type { Answer } from '../../electron/contract/errors.ts';

/** The answer of a transport that got none from the service. */
export function unreachable(message: string): Answer<never> {
  return { ok: false, error: { kind: 'unreachable', message } };
}

export const NO_ANSWER =
  'Trotwell does not answer. What you typed is kept here; check that it is still running, then try again.';
