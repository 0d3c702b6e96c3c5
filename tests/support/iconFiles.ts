/** A square picture in PNG. */
export interface Picture {
  readonly size: number;
  readonly png: Buffer;
}

/** The sizes of the icon theme that desktops ask for (freedesktop.org, Icon Theme Specification). */
export const LINUX_SIZES = [16, 24, 32, 48, 64, 128, 256, 512] as const;
/** Windows shows 256 at most; electron-builder asks for that one. */
export const ICO_SIZES = [16, 24, 32, 48, 64, 128, 256] as const;
export const ICNS_SIZES = [16, 32, 64, 128, 256, 512, 1024] as const;

const ICO_HEAD = 6;
const ICO_ENTRY = 16;

/** A Windows icon: a head, an entry of 16 bytes a picture, the pictures. Integers little-endian. */
export function ico(pictures: readonly Picture[]): Buffer {
  const head = Buffer.alloc(ICO_HEAD + ICO_ENTRY * pictures.length);
  head.writeUInt16LE(1, 2); // an icon, not a pointer
  head.writeUInt16LE(pictures.length, 4);
  let from = head.length;
  for (const [index, { size, png }] of pictures.entries()) {
    const at = ICO_HEAD + ICO_ENTRY * index;
    head.writeUInt8(size % 256, at); // 0 stands for 256
    head.writeUInt8(size % 256, at + 1);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.length, at + 8);
    head.writeUInt32LE(from, at + 12);
    from += png.length;
  }
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}

/** The kinds of a macOS icon that hold PNG, by size; the second ones are for screens of twice as many dots. */
const ICNS_KINDS: Readonly<Record<number, readonly string[]>> = {
  16: ['icp4'],
  32: ['icp5', 'ic11'],
  64: ['ic12'],
  128: ['ic07'],
  256: ['ic08', 'ic13'],
  512: ['ic09', 'ic14'],
  1024: ['ic10'],
};

/** A macOS icon: `icns`, its length, then each picture with its kind and length. Integers big-endian. */
export function icns(pictures: readonly Picture[]): Buffer {
  const parts = pictures.flatMap(({ size, png }) =>
    ICNS_KINDS[size]!.map((kind) => Buffer.concat([headOf(kind, png.length), png])),
  );
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  return Buffer.concat([headOf('icns', length), ...parts]);
}

function headOf(kind: string, length: number): Buffer {
  const head = Buffer.alloc(8);
  head.write(kind, 'latin1');
  head.writeUInt32BE(length + 8, 4);
  return head;
}
