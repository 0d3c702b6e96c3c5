import { statfsSync } from 'node:fs';

// Types of file systems that Linux tells of (include/uapi/linux/magic.h, as listed in statfs(2);
// mark M, from memory).
const NETWORK_TYPES: ReadonlySet<number> = new Set([
  0x6969, // nfs
  0x517b, // smb
  0xff534d42, // cifs
  0xfe534d42, // smb2
  0x5346414f, // afs
  0x01021997, // 9p
  0x00c36400, // ceph
  0x73757245, // coda
]);
const FUSE = 0x65735546;

const NETWORK =
  'This folder seems to lie on a network drive, where a database can be damaged when the connection breaks. Move the records to a folder on this computer.';
const THROUGH_A_PROGRAM =
  'Another program stands between this folder and the disk (it may be a network or copied folder). If it is, move the records to a folder on this computer.';

/** Why a folder is a poor place for a database; null when nothing can be told against it. */
export function placeWarning(folder: string): string | null {
  // Two slashes at the beginning name another computer (a UNC path).
  if (/^(\\\\|\/\/)[^\\/?.]/.test(folder)) return NETWORK;
  // The numbers mean something on Linux only.
  if (process.platform !== 'linux') return null;
  try {
    return warningOfType(statfsSync(folder).type);
  } catch {
    return null;
  }
}

/** The warning for a type of file system as Linux numbers them. */
export function warningOfType(type: number): string | null {
  // Node gives the field with its sign on some machines.
  const unsigned = type >>> 0;
  if (NETWORK_TYPES.has(unsigned)) return NETWORK;
  return unsigned === FUSE ? THROUGH_A_PROGRAM : null;
}
