import { existsSync, readFileSync, statfsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { placeWarning, warningOfType } from '../../electron/service/backup/place.ts';
import { openOwn, temporaryFolder } from '../service/support/desk.ts';

// The types of file systems as the Linux kernel numbers them: include/uapi/linux/magic.h (S). Where
// the header is installed, the numbers are read from it; the list below was copied from it.
const HEADER = '/usr/include/linux/magic.h';
const TYPES = {
  AFS_SUPER_MAGIC: [0x5346414f, /network drive/],
  AFS_FS_MAGIC: [0x6b414653, /network drive/],
  CEPH_SUPER_MAGIC: [0x00c36400, /network drive/],
  CODA_SUPER_MAGIC: [0x73757245, /network drive/],
  NFS_SUPER_MAGIC: [0x6969, /network drive/],
  SMB_SUPER_MAGIC: [0x517b, /network drive/],
  CIFS_SUPER_MAGIC: [0xff534d42, /network drive/],
  SMB2_SUPER_MAGIC: [0xfe534d42, /network drive/],
  V9FS_MAGIC: [0x01021997, /network drive/],
  MSDOS_SUPER_MAGIC: [0x4d44, /memory stick/],
  EXFAT_SUPER_MAGIC: [0x2011bab0, /memory stick/],
  FUSE_SUPER_MAGIC: [0x65735546, /Another program/],
  EXT4_SUPER_MAGIC: [0xef53, null],
  BTRFS_SUPER_MAGIC: [0x9123683e, null],
  XFS_SUPER_MAGIC: [0x58465342, null],
  F2FS_SUPER_MAGIC: [0xf2f52010, null],
  OVERLAYFS_SUPER_MAGIC: [0x794c7630, null],
  TMPFS_MAGIC: [0x01021994, null],
} as const;

/** The numbers of the header, by name. */
function numbersOf(header: string): Map<string, number> {
  const lines = header.matchAll(/^#define\s+(\w+)\s+(0x[\da-f]+)/gim);
  return new Map([...lines].map(([, name, value]) => [name!, Number(value)]));
}

describe('the place of the records', () => {
  test.each(Object.entries(TYPES))('%s is told for what it is', (_name, [type, warning]) => {
    // With and without a sign, as machines give it.
    for (const given of [type, type | 0]) {
      if (warning === null) expect(warningOfType(given)).toBeNull();
      else expect(warningOfType(given)).toMatch(warning);
    }
  });

  test.skipIf(!existsSync(HEADER))('has the numbers of the installed header', () => {
    const numbers = numbersOf(readFileSync(HEADER, 'utf8'));
    for (const [name, [type]] of Object.entries(TYPES)) {
      // An older header lacks the newer ones.
      if (numbers.has(name)) expect([name, numbers.get(name)]).toEqual([name, type]);
    }
    expect(numbers.get('NFS_SUPER_MAGIC')).toBe(0x6969);
  });

  test.each(['\\\\desk\\records', '//desk/records', '\\\\?\\UNC\\desk\\records'])(
    'on another computer is told by its name on Windows: %s',
    (folder) => {
      expect(placeWarning(folder, 'win32')).toMatch(/network drive/);
    },
  );

  test.each(['C:\\Users\\kim\\Trotwell', '\\\\?\\C:\\Users\\kim', '\\\\.\\C:\\Users', 'D:\\'])(
    'on this computer draws no warning on Windows: %s',
    (folder) => {
      expect(placeWarning(folder, 'win32')).toBeNull();
    },
  );

  test('where the system cannot be asked draws none', () => {
    expect(placeWarning('/Volumes/desk', 'darwin')).toBeNull();
    expect(placeWarning('', 'linux')).toBeNull();
  });

  test.skipIf(process.platform !== 'linux')(
    'is asked of the system, also before it is made',
    () => {
      // The processes' own file system stands for one that is there for certain, and warns of nothing.
      expect(placeWarning('/proc')).toBeNull();
      const folder = temporaryFolder();
      expect(placeWarning(join(folder, 'not', 'made', 'yet'))).toBe(
        warningOfType(statfsSync(folder).type),
      );
    },
  );

  test('is told with the backups', async () => {
    const desk = await openOwn();
    const { folderWarning } = await desk.ok('backup/status', {});
    expect(folderWarning).toBe(placeWarning(desk.folder));
  });
});
