import { badField } from '../refuse.ts';

/** The refusal for a file that ends too soon or contradicts itself. */
export const brokenFile = () =>
  badField('file', 'The file is cut off or damaged. Ask for it again, or copy it again.');

/** One named piece of a PNG or WebP. */
export interface Piece {
  readonly name: string;
  /** The whole piece: head, content and what follows it. */
  readonly whole: Buffer;
}

interface Shape {
  readonly start: number;
  readonly end: number;
  /** @returns name and length of the piece, all of it, that begins there */
  readonly read: (bytes: Buffer, at: number) => { readonly name: string; readonly length: number };
}

/** Cuts a file into its pieces. @throws Refusal (input) where a piece is not all there */
export function cutIntoPieces(bytes: Buffer, { start, end, read }: Shape): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = start;
  while (at < end) {
    if (at + 8 > bytes.length) throw brokenFile();
    const { name, length } = read(bytes, at);
    if (at + length > bytes.length) throw brokenFile();
    pieces.push({ name, whole: bytes.subarray(at, at + length) });
    at += length;
    if (name === 'IEND') break;
  }
  return pieces;
}
