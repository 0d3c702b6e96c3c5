import { createRequire } from 'node:module';

// pdfkit, under pdfmake, reads every font anew for each document and forgets how its words are shaped:
// two thirds of a print. It has fontkit open what it is given; fontkit takes formats of one's own. So
// it is given a ticket of a few bytes, and our format answers with the font that was opened before.

interface Position {
  xAdvance: number;
  yAdvance: number;
  xOffset: number;
  yOffset: number;
}

interface Run {
  readonly glyphs: readonly object[];
  readonly positions: readonly Position[];
  readonly advanceWidth: number;
}

/** The part of a fontkit font that is used here. */
interface Font {
  /** Glyphs by number, each with the characters of the text that first asked for it. */
  _glyphs: Record<number, object>;
  layout(text: string, features?: unknown): Run;
}

interface Fontkit {
  create(bytes: Uint8Array): Font;
  registerFormat(format: {
    new (stream: { readonly buffer: Uint8Array }): object;
    probe(bytes: Uint8Array): boolean;
  }): void;
}

/** "TROT", which begins no font file, and the number of the font. */
const MARK = [0x54, 0x52, 0x4f, 0x54] as const;
const TICKET_BYTES = MARK.length + 4;
/** Words kept for each font; past that, all are forgotten and begun anew. */
const MOST_WORDS = 20_000;

const kept: Font[] = [];
let fontkit: Fontkit | null = null;

/** The very fontkit that pdfkit uses; another copy would not know our format. */
function fontkitOfPdfkit(): Fontkit {
  const ours = createRequire(import.meta.url);
  const ofPdfmake = createRequire(ours.resolve('pdfmake'));
  const loaded = createRequire(ofPdfmake.resolve('pdfkit'))('fontkit') as Fontkit;
  loaded.registerFormat(KeptFont as never);
  return loaded;
}

const numberOn = (ticket: Uint8Array): number =>
  new DataView(ticket.buffer, ticket.byteOffset).getUint32(MARK.length);

/** A format whose files are tickets; opening one gives the font it stands for. */
class KeptFont {
  constructor({ buffer }: { readonly buffer: Uint8Array }) {
    return kept[numberOn(buffer)]!;
  }

  static probe(bytes: Uint8Array): boolean {
    return bytes.length === TICKET_BYTES && MARK.every((byte, index) => bytes[index] === byte);
  }
}

/** The font, shaping each word once. Positions are given out as copies: pdfkit scales them in place. */
function rememberWords(font: Font): Font {
  const shape = font.layout.bind(font);
  const words = new Map<string, Run>();
  const copy = (run: Run): Run => ({
    glyphs: run.glyphs,
    positions: run.positions.map((position) => ({ ...position })),
    advanceWidth: run.advanceWidth,
  });
  font.layout = (text, features) => {
    if (features !== undefined && features !== null) return shape(text, features);
    const known = words.get(text);
    if (known !== undefined) return copy(known);
    if (words.size >= MOST_WORDS) words.clear();
    // The characters go into the file for copying and searching. A glyph that another word has left
    // would bring that word's characters along.
    font._glyphs = {};
    const run = shape(text);
    words.set(text, copy(run));
    return run;
  };
  return font;
}

/**
 * Opens a font once, for all documents of this thread.
 * @returns what pdfmake is to be given in its place
 */
export function keepFont(bytes: Uint8Array): Uint8Array {
  fontkit ??= fontkitOfPdfkit();
  kept.push(rememberWords(fontkit.create(bytes)));
  const ticket = new Uint8Array(TICKET_BYTES);
  ticket.set(MARK);
  new DataView(ticket.buffer).setUint32(MARK.length, kept.length - 1);
  return ticket;
}
