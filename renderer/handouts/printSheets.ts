import type { RenderedHandout } from '../../electron/contract/contract.ts';
import { savePdf, savingSentence } from '../api/saveFile.ts';
import { printPdfs } from './printPdf.ts';

/**
 * Prints sheets where this window can, and else hands over their PDF.
 * @returns the sentence that says which
 */
export async function printSheets({ fileName, base64 }: RenderedHandout): Promise<string> {
  if (await printPdfs([base64])) return 'given to the print window.';
  const saving = await savePdf(fileName, base64);
  const said = `this window cannot print. ${savingSentence(fileName, saving)}`;
  // Nothing opens by itself: what is not there cannot be opened, and no program is started from here.
  return saving === 'not saved' ? said : `${said} Open it in your PDF program to print it.`;
}
