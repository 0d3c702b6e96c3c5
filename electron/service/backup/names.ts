import type { BackupLine } from '../../contract/calls/backup.ts';

/** Why a backup was made by itself. */
export type BackupReason = BackupLine['reason'];

export interface BackupName {
  readonly reason: BackupReason;
  /** When it was made, UTC instant. */
  readonly madeAt: string;
  /** Counts the backups of a folder, whatever the clock says; 0 in names from before. */
  readonly number: number;
}

/** An instant as part of a file's name: colons are not allowed in names everywhere. */
export const stampOf = (instant: string): string => instant.replaceAll(/[:.]/g, '-');

const NAME =
  /^(automatic|before-restore|before-schema(?=-\d+-))(?:-\d{1,4})?-(\d{4}-\d\d-\d\dT\d\d)-(\d\d)-(\d\d)-(\d{3}Z)(?:_\d{1,3})?(?:-n(\d{1,9}))?\.sqlite$/;

/** Reads the name of a backup in the folder of backups; null for any other file. */
export function readBackupName(name: string): BackupName | null {
  const found = NAME.exec(name);
  if (found === null) return null;
  const [, reason, hour, minutes, seconds, rest, number = '0'] = found;
  const madeAt = `${hour}:${minutes}:${seconds}.${rest}`;
  if (Number.isNaN(Date.parse(madeAt))) return null;
  return { reason: reason as BackupReason, madeAt, number: Number(number) };
}
