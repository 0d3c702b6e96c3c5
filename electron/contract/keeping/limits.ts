// Our own choices (mark D) about backups and the lock, apart from the schemas that use them.

/** How long the passphrase of a backup or of the lock is, in characters. */
export const PASSPHRASE_LENGTH = { min: 10, max: 200 } as const;

/** How many automatic backups may be kept. */
export const BACKUP_LIMITS = {
  dailyBackups: { label: 'Daily backups', unit: 'days', min: 1, max: 60, whole: true },
  weeklyBackups: { label: 'Weekly backups', unit: 'weeks', min: 0, max: 104, whole: true },
} as const;

/** How long nobody may be at the desk before it locks itself. */
export const IDLE_LIMIT = {
  label: 'Time until it locks',
  unit: 'min',
  min: 1,
  max: 240,
  whole: true,
} as const;
