import { grouped } from '../../core/quantityText.ts';
import type { BackupLine, RecordsSummary } from '../../electron/contract/calls/backup.ts';

export const REASON_WORDS: Readonly<Record<BackupLine['reason'], string>> = {
  automatic: 'automatic',
  'before-schema': 'before a change of the records’ format',
  'before-restore': 'before a restore',
};

/** "820 kB", "1.4 MB": as file managers round it. */
export function sizeText(bytes: number): string {
  const units = ['kB', 'MB', 'GB'];
  let size = bytes / 1024;
  let unit = 0;
  while (size >= 1000 && unit < units.length - 1) {
    size /= 1024;
    unit += 1;
  }
  return `${size >= 10 || unit === 0 ? Math.ceil(size) : size.toFixed(1)} ${units[unit]}`;
}

/** What the preview lists, in this order. */
export const SUMMARY_ROWS = [
  { key: 'owners', label: 'Owners' },
  { key: 'dogs', label: 'Dogs' },
  { key: 'visits', label: 'Visits' },
  { key: 'plans', label: 'Running plans (every version)' },
  { key: 'attachments', label: 'Attachments' },
] as const satisfies readonly { key: keyof RecordsSummary; label: string }[];

/** "1 attachment is", "3 attachments are". */
export function attachmentsAre(count: number): string {
  return count === 1 ? '1 attachment is' : `${grouped(count)} attachments are`;
}
