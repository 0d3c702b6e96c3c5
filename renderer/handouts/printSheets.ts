import type { RenderedHandout } from '../../electron/contract/contract.ts';
import { savePdf, savingSentence } from '../api/saveFile.ts';
import { printPdf } from './printPdf.ts';

/**
 * Prints sheets where this window can, and else hands over their PDF.
 * @returns the sentence that says which
 */
export async function printSheets({ fileName, base64 }: RenderedHandout): Promise<string> {
  if (await printPdf(base64)) return 'given to the print window.';
  const saving = savingSentence(fileName, await savePdf(fileName, base64));
  return `this window cannot print. ${saving} Print it from your PDF program.`;
}
