import { brokenFile } from './pieces.ts';

// JPEG's markers as in ITU-T T.81, table B.1; Exif's orientation as in CIPA DC-008, tag 0x0112
// (both M, from memory; the tests compare with what a browser makes of the result).
const END = 0xd9;
const SCAN = 0xda;
const COMMENT = 0xfe;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP14 = 0xee;
const APP15 = 0xef;
const ORIENTATION = 0x0112;
/** JFIF's head with its marker, without a small copy of the picture. */
const JFIF_BYTES = 18;

/**
 * The picture without what was noted beside it: place, time, camera, small copies. Only how it is
 * turned is kept, its colours' profile, and nothing that follows its end.
 * @throws Refusal (input) for a file that is cut off
 */
export function cleanJpeg(bytes: Buffer): Buffer {
  const kept: Buffer[] = [];
  let orientation = 1;
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) throw brokenFile();
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at += 1; // a byte that fills up
      continue;
    }
    const end = at + 2 + bytes.readUInt16BE(at + 2);
    if (end > bytes.length) throw brokenFile();
    const segment = bytes.subarray(at, end);
    if (marker === APP1) orientation = orientationIn(segment) ?? orientation;
    const drawn = drawnOf(marker, segment);
    if (drawn !== null) kept.push(drawn);
    at = end;
    if (marker !== SCAN) continue;
    const next = afterScan(bytes, at);
    kept.push(bytes.subarray(at, next));
    at = next;
    if (bytes[at + 1] === END) return joined(kept, orientation);
  }
  throw brokenFile();
}

/** What of a segment the picture needs to be drawn; null for what is only noted beside it. */
function drawnOf(marker: number, segment: Buffer): Buffer | null {
  if (marker === COMMENT) return null;
  if (marker < APP0 || marker > APP15) return segment;
  const begins = (name: string): boolean => segment.toString('latin1', 4, 4 + name.length) === name;
  if (marker === APP2) return begins('ICC_PROFILE\0') ? segment : null;
  if (marker === APP14) return begins('Adobe') ? segment : null;
  return marker === APP0 && begins('JFIF\0') ? withoutThumbnail(segment) : null;
}

/**
 * JFIF's head holds a small copy of the picture behind its 16 bytes, and its extension (JFXX) another
 * one, both of the picture before it was cut or blackened (ITU-T T.871, 10; M, from memory).
 */
function withoutThumbnail(segment: Buffer): Buffer {
  if (segment.length <= JFIF_BYTES) return segment;
  const head = Buffer.from(segment.subarray(0, JFIF_BYTES));
  head.writeUInt16BE(JFIF_BYTES - 2, 2);
  head.writeUInt16BE(0, JFIF_BYTES - 2);
  return head;
}

/** Where the next marker stands after the compressed lines of a scan. */
function afterScan(bytes: Buffer, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at !== -1; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next === undefined) break;
    const isData = next === 0x00 || next === 0xff || (next >= 0xd0 && next <= 0xd7);
    if (!isData) return at;
  }
  throw brokenFile();
}

/** How the picture is turned, 1 to 8; null where the segment does not say. */
function orientationIn(segment: Buffer): number | null {
  if (segment.toString('latin1', 4, 10) !== 'Exif\0\0') return null;
  const tiff = segment.subarray(10);
  if (tiff.length < 8) return null;
  const little = tiff.toString('latin1', 0, 2) === 'II';
  const short = (at: number): number => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const first = little ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4);
  if (first + 2 > tiff.length) return null;
  const count = short(first);
  for (let i = 0; i < count; i++) {
    const entry = first + 2 + i * 12;
    if (entry + 12 > tiff.length) return null;
    if (short(entry) !== ORIENTATION) continue;
    const value = short(entry + 8);
    return value >= 1 && value <= 8 ? value : null;
  }
  return null;
}

function joined(kept: readonly Buffer[], orientation: number): Buffer {
  const start = Buffer.from([0xff, 0xd8]);
  const turned = orientation === 1 ? [] : [orientationSegment(orientation)];
  // JFIF asks to come first.
  const jfif = kept[0]?.[1] === APP0 ? 1 : 0;
  return Buffer.concat([
    start,
    ...kept.slice(0, jfif),
    ...turned,
    ...kept.slice(jfif),
    Buffer.from([0xff, END]),
  ]);
}

/** An Exif segment that says how the picture is turned and nothing else. */
function orientationSegment(orientation: number): Buffer {
  const exif = Buffer.alloc(36);
  exif.writeUInt16BE(0xff00 + APP1, 0);
  exif.writeUInt16BE(exif.length - 2, 2);
  exif.write('Exif\0\0MM', 4, 'latin1');
  exif.writeUInt16BE(42, 12);
  exif.writeUInt32BE(8, 14);
  exif.writeUInt16BE(1, 18);
  exif.writeUInt16BE(ORIENTATION, 20);
  exif.writeUInt16BE(3, 22);
  exif.writeUInt32BE(1, 24);
  exif.writeUInt16BE(orientation, 28);
  return exif;
}
