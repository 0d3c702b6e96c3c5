import { Refusal } from '../../contract/errors.ts';

export const damaged = (what: string): Refusal =>
  new Refusal({
    kind: 'storage',
    message: `This backup is damaged (${what}); nothing was changed. Use another one.`,
  });

/** The refusal for a passphrase that does not open the file. */
export function wrongPassphrase(): Refusal {
  const message =
    'The passphrase does not open this backup. That alone does not mean that the file is damaged: try the passphrase again.';
  return new Refusal({ kind: 'input', message, fields: [{ path: 'passphrase', message }] });
}

export function needsPassphrase(): Refusal {
  const message = 'This backup is protected; give its passphrase.';
  return new Refusal({ kind: 'input', message, fields: [{ path: 'passphrase', message }] });
}

/** How costly a guess may be: less would be guessed, more would take a desk minutes to open. */
export const costRefusal = (log2N: number): Refusal =>
  new Refusal({
    kind: 'storage',
    message: `This backup asks for a cost of 2^${log2N} for each try of its passphrase. Trotwell opens 2^10 to 2^18; open it with an age program and restore what comes out.`,
  });

export const noBackup = (): Refusal =>
  new Refusal({ kind: 'input', message: 'This file is not a backup of Trotwell.' });

export const madeByNewer = (): Refusal =>
  new Refusal({
    kind: 'storage',
    message: 'This backup was made by a newer Trotwell; install the newer version to restore it.',
  });
