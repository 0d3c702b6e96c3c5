import { RECORDING, type AttachmentType } from '../../contract/files/attachment.ts';
import { badField } from '../refuse.ts';
import { cleanJpeg } from './cleanJpeg.ts';
import { brokenFile, cutIntoPieces } from './pieces.ts';

const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
/**
 * Pieces of a PNG that draw the picture (W3C PNG, 3rd edition, chapter 11): what is on no list may
 * tell of place, time or person, today or in an edition to come.
 */
const DRAWN_IN_PNG: ReadonlySet<string> = new Set(
  (
    'IHDR PLTE IDAT IEND tRNS cHRM gAMA iCCP sBIT sRGB cICP mDCV cLLI bKGD pHYs ' + 'acTL fcTL fdAT'
  ).split(' '),
);
/** Pieces of a WebP that draw the picture (RFC 9649, 2.7). */
const DRAWN_IN_WEBP: ReadonlySet<string> = new Set([
  'VP8X',
  'VP8 ',
  'VP8L',
  'ALPH',
  'ICCP',
  'ANIM',
  'ANMF',
]);
/** What stands in a frame of an animated WebP before the pieces of its picture (2.7.1.5). */
const FRAME_HEAD_BYTES = 8 + 16;
/** In the head of a WebP: it has Exif, it has XMP (RFC 9649, 2.7.1). */
const WEBP_NOTED = 0x08 | 0x04;

/** The root of a GPX file, behind its declaration and comments. */
const GPX_ROOT = /^\uFEFF?\s*(?:<\?[^>]*>\s*|<!--(?:[^-]|-[^-])*-->\s*)*<(?:\w+:)?gpx[\s>]/;
/** So far into a file its root is looked for. */
const HEAD_BYTES = 4096;

/** What a file is, told by its first bytes; null for anything that is not taken. */
export function typeOf(bytes: Buffer): AttachmentType | null {
  const text = (from: number, to: number): string => bytes.toString('latin1', from, to);
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (bytes.subarray(0, PNG.length).equals(PNG)) return 'image/png';
  if (text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP') return 'image/webp';
  if (text(0, 5) === '%PDF-') return 'application/pdf';
  return GPX_ROOT.test(bytes.toString('utf8', 0, HEAD_BYTES)) ? RECORDING : null;
}

/**
 * The content to be kept: a picture without what is noted beside it, a PDF as it is, and a recorded
 * run where it is `asked` for.
 * @throws Refusal (input) for another type, or a picture that is cut off
 */
export function contentToKeep(
  bytes: Buffer,
  asked: { readonly recording: boolean } = { recording: false },
): { type: AttachmentType; content: Buffer } {
  const type = typeOf(bytes);
  if (type === null || (type === RECORDING && !asked.recording)) {
    throw badField(
      'file',
      'A photo must be a JPEG, PNG or WebP, and a letter a PDF; this file is none of them, whatever its name says.',
    );
  }
  if (type === 'image/jpeg') return { type, content: cleanJpeg(bytes) };
  if (type === 'image/png') return { type, content: cleanPng(bytes) };
  if (type === 'image/webp') return { type, content: cleanWebp(bytes) };
  return { type, content: bytes };
}

function cleanPng(bytes: Buffer): Buffer {
  const pieces = cutIntoPieces(bytes, {
    start: PNG.length,
    end: Infinity,
    read: (from, at) => ({
      name: from.toString('latin1', at + 4, at + 8),
      length: from.readUInt32BE(at) + 12,
    }),
  });
  const kept = pieces.filter(({ name }) => DRAWN_IN_PNG.has(name));
  return Buffer.concat([PNG, ...kept.map(({ whole }) => whole)]);
}

function cleanWebp(bytes: Buffer): Buffer {
  if (bytes.length < 12) throw brokenFile();
  const end = bytes.readUInt32LE(4) + 8;
  if (end > bytes.length) throw brokenFile();
  const kept = drawnInWebp(bytes, 12, end);
  const whole = Buffer.concat([bytes.subarray(0, 12), ...kept]);
  whole.writeUInt32LE(whole.length - 8, 4);
  if (whole.toString('latin1', 12, 16) === 'VP8X' && whole.length > 20) whole[20]! &= ~WEBP_NOTED;
  return whole;
}

function drawnInWebp(bytes: Buffer, start: number, end: number): readonly Buffer[] {
  const pieces = cutIntoPieces(bytes.subarray(0, end), {
    start,
    end,
    read: (from, at) => {
      const length = from.readUInt32LE(at + 4);
      return { name: from.toString('latin1', at, at + 4), length: 8 + length + (length % 2) };
    },
  });
  return pieces
    .filter(({ name }) => DRAWN_IN_WEBP.has(name))
    .map(({ name, whole }) => (name === 'ANMF' ? cleanFrame(whole) : whole));
}

/** A frame is made of pieces itself. */
function cleanFrame(frame: Buffer): Buffer {
  if (frame.length < FRAME_HEAD_BYTES) throw brokenFile();
  const parts = drawnInWebp(frame, FRAME_HEAD_BYTES, 8 + frame.readUInt32LE(4));
  const whole = Buffer.concat([frame.subarray(0, FRAME_HEAD_BYTES), ...parts]);
  whole.writeUInt32LE(whole.length - 8, 4);
  return whole;
}
