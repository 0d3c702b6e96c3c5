import { existsSync, statfsSync } from 'node:fs';
import { dirname } from 'node:path';

// Types of file systems that Linux tells of (include/uapi/linux/magic.h of the kernel; mark S).
const NETWORK_TYPES: ReadonlySet<number> = new Set([
  0x6969, // NFS
  0x517b, // SMB
  0xff534d42, // CIFS
  0xfe534d42, // SMB2
  0x5346414f, // AFS
  0x6b414653, // AFS of the kernel
  0x01021997, // V9FS
  0x00c36400, // CEPH
  0x73757245, // CODA
]);
/** The file systems of memory sticks and cards. */
const STICK_TYPES: ReadonlySet<number> = new Set([
  0x4d44, // MSDOS
  0x2011bab0, // EXFAT
]);
const FUSE = 0x65735546;

const NETWORK =
  'This folder seems to lie on a network drive, where a database can be damaged when the connection breaks. Move the records to a folder on this computer.';
const STICK =
  'This folder seems to lie on a memory stick or card. Pulled out too early, it can lose or damage the records. Move them to a folder on this computer, and keep backups on the stick.';
const THROUGH_A_PROGRAM =
  'Another program stands between this folder and the disk (it may be a network or copied folder). If it is, move the records to a folder on this computer.';

/**
 * Why a folder is a poor place for a database; null when nothing can be told against it. A folder
 * that a program copies elsewhere looks like any other, and so does a stick with a disk's file system.
 */
export function placeWarning(
  folder: string,
  platform: NodeJS.Platform = process.platform,
): string | null {
  if (platform === 'win32') return onOtherComputer(folder) ? NETWORK : null;
  // The numbers mean something on Linux only.
  if (platform !== 'linux') return null;
  try {
    return warningOfType(statfsSync(nearestThere(folder)).type);
  } catch {
    return null;
  }
}

/** Two slashes at the beginning name another computer, but for names of devices and long paths. */
function onOtherComputer(folder: string): boolean {
  return /^[\\/]{2}([^\\/?.]|\?[\\/]UNC[\\/])/i.test(folder);
}

/** The folder itself, or where it is going to be made. */
function nearestThere(folder: string): string {
  const parent = dirname(folder);
  return existsSync(folder) || parent === folder ? folder : nearestThere(parent);
}

/** The warning for a type of file system as Linux numbers them. */
export function warningOfType(type: number): string | null {
  // Node gives the field with its sign on some machines.
  const unsigned = type >>> 0;
  if (NETWORK_TYPES.has(unsigned)) return NETWORK;
  if (STICK_TYPES.has(unsigned)) return STICK;
  return unsigned === FUSE ? THROUGH_A_PROGRAM : null;
}
