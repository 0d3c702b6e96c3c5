/** The code points that a font can draw. */
export type Coverage = ReadonlySet<number>;

/** Printed instead of a character that a font cannot draw; both families have it. */
export const REPLACEMENT = '\u25A0';

// Platform and encoding of the Unicode subtables, best first (OpenType 1.9, "cmap").
const UNICODE_SUBTABLES = ['3/10', '0/4', '0/6', '3/1', '0/3'];

/**
 * The code points of a TrueType or OpenType font, read from its `cmap` table (formats 4 and 12).
 * pdfmake draws nothing for a missing glyph and raises no error, so a document is checked first.
 * @throws RangeError when the bytes hold no Unicode character map.
 */
export function fontCoverage(bytes: Uint8Array): Coverage {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const cmap = tableOffset(view, 'cmap');
  const offset = cmap === undefined ? undefined : bestSubtable(view, cmap);
  if (offset === undefined) throw new RangeError('font must have a Unicode character map');
  return view.getUint16(offset) === 12 ? readFormat12(view, offset) : readFormat4(view, offset);
}

function tableOffset(view: DataView, tag: string): number | undefined {
  const count = view.getUint16(4);
  for (let at = 12; at < 12 + count * 16; at += 16) {
    const name = String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
    if (name === tag) return view.getUint32(at + 8);
  }
  return undefined;
}

function bestSubtable(view: DataView, cmap: number): number | undefined {
  const found = new Map<string, number>();
  const count = view.getUint16(cmap + 2);
  for (let at = cmap + 4; at < cmap + 4 + count * 8; at += 8) {
    const offset = cmap + view.getUint32(at + 4);
    const readable = [4, 12].includes(view.getUint16(offset));
    if (readable) found.set(`${view.getUint16(at)}/${view.getUint16(at + 2)}`, offset);
  }
  const best = UNICODE_SUBTABLES.find((key) => found.has(key));
  return best === undefined ? undefined : found.get(best);
}

function readFormat12(view: DataView, offset: number): Coverage {
  const points = new Set<number>();
  const groups = view.getUint32(offset + 12);
  for (let at = offset + 16; at < offset + 16 + groups * 12; at += 12) {
    const last = view.getUint32(at + 4);
    for (let point = view.getUint32(at); point <= last; point += 1) points.add(point);
  }
  return points;
}

function readFormat4(view: DataView, offset: number): Coverage {
  const points = new Set<number>();
  const doubled = view.getUint16(offset + 6);
  const ends = offset + 14;
  const starts = ends + doubled + 2;
  for (let i = 0; i < doubled; i += 2) {
    const last = view.getUint16(ends + i);
    for (let point = view.getUint16(starts + i); point <= last && point < 0xffff; point += 1) {
      points.add(point);
    }
  }
  return points;
}

/** What both fonts can draw: the words of a handout may land in a heading or in the text. */
export function sharedCoverage(fonts: readonly Uint8Array[]): Coverage {
  const [first, ...others] = fonts.map(fontCoverage);
  if (first === undefined) return new Set();
  return new Set([...first].filter((point) => others.every((other) => other.has(point))));
}

/** Layout characters that draw nothing on purpose. */
const INVISIBLE = new Set(['\n', '\t', '\u00ad', '\u200b']);

/** The characters of `text` that are not in `coverage`, each once, in order. */
export function missingCharacters(text: string, coverage: Coverage): readonly string[] {
  const missing = [...text].filter(
    (character) => !INVISIBLE.has(character) && !coverage.has(character.codePointAt(0) ?? 0),
  );
  return [...new Set(missing)];
}

/** Longer than the words and addresses of our own sheets; a column is sure to hold a piece of it. */
const UNBROKEN = /[^\s/\-\u00ad\u200b]{31,}/gu;
const PIECE = /(?:\P{M}\p{M}*){12}(?=.)/gu;

/** `text` with places to break in words that no line would hold; pdfmake lets them widen a table. */
export function breakable(text: string): string {
  return text.replace(UNBROKEN, (word) => word.replace(PIECE, '$&\u200b'));
}

/**
 * `text` with composed letters, `REPLACEMENT` for every character the fonts cannot draw, and places
 * to break in very long words.
 */
export function drawable(text: string, coverage: Coverage): string {
  const composed = text.normalize('NFC');
  const missing = missingCharacters(composed, coverage);
  if (missing.length === 0) return breakable(composed);
  return breakable([...composed].map((c) => (missing.includes(c) ? REPLACEMENT : c)).join(''));
}
