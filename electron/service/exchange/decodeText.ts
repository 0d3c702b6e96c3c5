import type { Encoding } from '../../contract/exchange/weightImport.ts';
import { badField } from '../refuse.ts';

/**
 * The text of a file: by its byte order mark, else as UTF-8 where it is that throughout, else as
 * Windows-1252, which is how spreadsheets of western Europe and America write by default.
 * @throws Refusal (input) when it holds what no text holds.
 */
export function decodeText(bytes: Buffer): { text: string; encoding: Encoding } {
  const decoded = decoded16(bytes) ?? decoded8(bytes);
  // A NUL is in no text; archives and spreadsheets of the binary kind are full of them.
  if (decoded.text.includes('\u0000')) throw notText();
  return decoded;
}

function decoded16(bytes: Buffer): { text: string; encoding: Encoding } | null {
  const mark = bytes.subarray(0, 2).toString('hex');
  if (mark !== 'fffe' && mark !== 'feff') return null;
  const decoder = new TextDecoder(mark === 'fffe' ? 'utf-16le' : 'utf-16be', { fatal: true });
  try {
    return { text: decoder.decode(bytes), encoding: 'UTF-16' };
  } catch {
    throw notText();
  }
}

function decoded8(bytes: Buffer): { text: string; encoding: Encoding } {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Windows-1252' };
  }
}

function notText() {
  return badField(
    'token',
    'The file is not a table of text. Save it as CSV in the other program and choose it again.',
  );
}
