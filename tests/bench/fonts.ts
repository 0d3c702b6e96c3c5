import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import pdfmake from 'pdfmake';
import { FONT_FILE_NAMES, FONT_FILES } from '../../templates/fonts.ts';
import { FONTS } from './service.ts';

/** Gives pdfmake in this thread the fonts of the handouts, for the documents without templates. */
export function loadFonts(): void {
  const { virtualfs } = pdfmake as unknown as {
    virtualfs: { writeFileSync(name: string, content: Uint8Array): void };
  };
  for (const name of FONT_FILE_NAMES)
    virtualfs.writeFileSync(name, readFileSync(join(FONTS, name)));
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy(() => false);
  pdfmake.setFonts(structuredClone(FONT_FILES));
}
