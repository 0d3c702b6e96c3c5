import type { Logo } from './model.ts';

/** Largest logo file, in bytes; a letterhead needs far less. */
export const LOGO_MAX_BYTES = 512 * 1024;
/** Largest width or height of a PNG or JPEG logo, in pixels. */
export const LOGO_MAX_PIXELS = 4000;

/** Why a logo was refused; the sentence is shown as it stands. */
export type LogoCheck =
  { readonly ok: true; readonly logo: Logo } | { readonly ok: false; readonly problem: string };

const refuse = (problem: string): LogoCheck => ({ ok: false, problem });

interface Pixels {
  readonly width: number;
  readonly height: number;
}

/**
 * Checks a file that is to become the practice's logo: PNG, JPEG or a plain SVG drawing, by its
 * content and not by its name.
 */
export function checkLogo(bytes: Uint8Array): LogoCheck {
  if (bytes.length === 0) return refuse('The logo file is empty.');
  if (bytes.length > LOGO_MAX_BYTES) {
    return refuse(`The logo file may have at most ${LOGO_MAX_BYTES / 1024} kB.`);
  }
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) {
    return checkPixels('image/png', bytes, pngSize(bytes));
  }
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) {
    return checkPixels('image/jpeg', bytes, jpegSize(bytes));
  }
  return checkSvg(bytes);
}

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((value, index) => bytes[index] === value);
}

function checkPixels(
  mediaType: 'image/png' | 'image/jpeg',
  bytes: Uint8Array,
  size: Pixels | undefined,
): LogoCheck {
  if (size === undefined || size.width === 0 || size.height === 0) {
    return refuse('The logo file is damaged: its size in pixels cannot be read.');
  }
  if (Math.max(size.width, size.height) > LOGO_MAX_PIXELS) {
    return refuse(`The logo may have at most ${LOGO_MAX_PIXELS} pixels a side.`);
  }
  return { ok: true, logo: { mediaType, data: Buffer.from(bytes).toString('base64') } };
}

/** Width and height from the first chunk (PNG specification, IHDR). */
function pngSize(bytes: Uint8Array): Pixels | undefined {
  if (bytes.length < 33) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

/** Width and height from the first frame header (ITU-T T.81, SOF0 to SOF15 without DHT, JPG, DAC). */
function jpegSize(bytes: Uint8Array): Pixels | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 9 < bytes.length) {
    const marker = view.getUint16(at);
    if (marker >>> 8 !== 0xff) return undefined;
    const isFrame =
      marker >= 0xffc0 && marker <= 0xffcf && ![0xffc4, 0xffc8, 0xffcc].includes(marker);
    if (isFrame) return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}

// Shapes and paint only. Elements that fetch (image, use with an outside address, style imports),
// run (script, event attributes, foreignObject, animation) or expand (entities) have no business in
// a logo: pdfmake would open a file that an SVG image names, past its own access policy.
const ALLOWED_ELEMENTS = new Set(
  'svg g defs title desc rect circle ellipse line polyline polygon path clipPath linearGradient radialGradient stop'.split(
    ' ',
  ),
);
const ELEMENT = /<\s*\/?\s*([^\s/>!?]+)/g;
const ROOT = /^(?:\uFEFF)?\s*(?:<\?xml[^?]*\?>)?\s*(?:<!--[\s\S]*?-->\s*)*<svg[\s>]/;
const COMMENT = /<!--[\s\S]*?-->/g;
const OUTSIDE = /\bhref\s*=|\bon\w+\s*=|@import/i;
const OUTSIDE_URL = /url\(\s*["']?\s*[^#"'\s)]/i;

function checkSvg(bytes: Uint8Array): LogoCheck {
  let markup: string;
  try {
    markup = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refuse('The logo must be a PNG, JPEG or SVG picture.');
  }
  if (!ROOT.test(markup)) return refuse('The logo must be a PNG, JPEG or SVG picture.');
  const plain = markup.replace(COMMENT, '').replace(/^\uFEFF?\s*<\?xml[^?]*\?>/, '');
  if (/<!|<\?/.test(plain)) {
    return refuse('The SVG logo may not hold declarations or entities.');
  }
  const strange = [...plain.matchAll(ELEMENT)]
    .map((match) => match[1] ?? '')
    .find((name) => !ALLOWED_ELEMENTS.has(name));
  if (strange !== undefined) {
    return refuse(`The SVG logo may hold plain shapes only, but has the element "${strange}".`);
  }
  if (OUTSIDE.test(plain) || OUTSIDE_URL.test(plain)) {
    return refuse('The SVG logo may not point to anything outside itself.');
  }
  if (
    !/<svg[^>]*\bviewBox\s*=/.test(plain) &&
    !/<svg[^>]*\bwidth\s*=[^>]*\bheight\s*=/.test(plain)
  ) {
    return refuse('The SVG logo must say its size (viewBox, or width and height).');
  }
  return { ok: true, logo: { mediaType: 'image/svg+xml', data: plain.trim() } };
}
