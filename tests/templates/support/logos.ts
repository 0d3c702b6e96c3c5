import { crc32, deflateSync } from 'node:zlib';
import type { Logo } from '../../../templates/index.ts';

/** A PNG of one colour, built by the PNG specification (chunk layout, CRC). */
export function png(width: number, height: number): Uint8Array {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'ascii'), data]);
    const out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length, 0);
    body.copy(out, 4);
    out.writeUInt32BE(crc32(body), body.length + 4);
    return out;
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc((width + 1) * height, 0x60);
  // Each row begins with its filter: 0, none.
  for (let row = 0; row < height; row += 1) rows[row * (width + 1)] = 0;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** An invented practice's sign: a leaf over a line. */
export const svgLogo: Logo = {
  mediaType: 'image/svg+xml',
  data: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 40"><path d="M10 30 C10 10 40 5 60 8 C55 28 30 36 10 30 Z" fill="#7a3b12"/><path d="M10 30 L110 30" stroke="#7a3b12" stroke-width="2" fill="none"/></svg>',
};

export const pngLogo: Logo = {
  mediaType: 'image/png',
  data: Buffer.from(png(90, 30)).toString('base64'),
};
