import { execFileSync } from 'node:child_process';

/** The text of a PDF, read by a program that had no part in making it (poppler's pdftotext). */
export function pdfText(bytes: Buffer): string {
  return execFileSync('pdftotext', ['-layout', '-', '-'], { input: bytes, encoding: 'utf8' });
}
