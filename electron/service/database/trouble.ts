import BetterSqlite3 from 'better-sqlite3';
import { Refusal, type Trouble } from '../../contract/errors.ts';

/** The refusal for a file of records, or a disk, that cannot be used as it is. */
export function troubled(trouble: Trouble, message: string): Refusal {
  return new Refusal({ kind: 'storage', message, trouble });
}

/** True for a refusal because of one of these troubles. */
export const isTrouble = (error: unknown, ...troubles: readonly Trouble[]): error is Refusal =>
  error instanceof Refusal && troubles.some((trouble) => trouble === error.error.trouble);

/** Turns an error of the database driver or of the disk into an answer; others stay as they are. */
export function storageRefusal(error: unknown): unknown {
  if (error instanceof BetterSqlite3.SqliteError) return ofDatabase(error.code) ?? error;
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  return code === undefined ? error : (ofDisk(code) ?? error);
}

const FULL = (): Refusal =>
  troubled('disk full', 'The disk is full; nothing was saved. Make room and try again.');
/** SQLite does not hand the system's reason on; a lack of room is by far the most common. */
const NOT_WRITTEN = (): Refusal =>
  troubled(
    'disk full',
    'The disk could not be written, most likely because it is full; nothing was saved. Make room and try again.',
  );
const UNWRITABLE = (): Refusal =>
  troubled('unwritable', 'The folder of records cannot be written to; nothing was saved.');
const HELD = (): Refusal =>
  troubled('held', 'Another program holds the records; nothing was saved. Close it and try again.');
const IN_THE_WAY = (): Refusal =>
  troubled(
    'unreadable',
    'In the folder of records something else lies in the place of a file or folder of Trotwell; nothing was saved. Move it away.',
  );
const NO_ANSWER = (): Refusal =>
  new Refusal({ kind: 'storage', message: 'The disk did not answer; nothing was saved.' });

/** Null for what is a fault of the program (a wrong statement), not of disk or file. */
function ofDatabase(code: string): Refusal | null {
  if (code === 'SQLITE_NOTADB')
    return troubled('damaged', 'The file of records is not a database; it was not touched.');
  if (code.startsWith('SQLITE_CORRUPT')) {
    return troubled(
      'damaged',
      'The file of records is damaged; it was not touched. Restore the latest backup.',
    );
  }
  if (code.startsWith('SQLITE_FULL')) return FULL();
  if (code.startsWith('SQLITE_READONLY') || code.startsWith('SQLITE_CANTOPEN')) return UNWRITABLE();
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return HELD();
  }
  if (code.startsWith('SQLITE_CONSTRAINT'))
    return new Refusal({
      kind: 'storage',
      message: 'The records refused an impossible value; nothing was saved.',
    });
  if (/^SQLITE_IOERR_(WRITE|SHM|FSYNC|TRUNCATE)/.test(code)) return NOT_WRITTEN();
  return code.startsWith('SQLITE_IOERR') ? NO_ANSWER() : null;
}

function ofDisk(code: string): Refusal | null {
  if (['ENOSPC', 'EDQUOT', 'EFBIG'].includes(code)) return FULL();
  if (['EROFS', 'EACCES', 'EPERM'].includes(code)) return UNWRITABLE();
  if (['ENOTDIR', 'EISDIR', 'EEXIST'].includes(code)) return IN_THE_WAY();
  // A name that may not be moved: a disk of its own, or on Windows a file that someone looks into.
  if (['EBUSY', 'EXDEV', 'ENOTEMPTY'].includes(code)) return HELD();
  return code === 'EIO' ? NO_ANSWER() : null;
}
