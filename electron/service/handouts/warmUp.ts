import { OWNER_WORDS } from '../../../templates/index.ts';
import { renderPdf } from '../../../templates/render.ts';
import { BODY, palette, styles } from '../../../templates/theme.ts';
import type { Language } from '../../contract/records.ts';

export interface WarmUp {
  readonly fontsFolder: string;
  /** Whose words are shaped ahead. */
  readonly language: Language;
}

/** A print that is asked for meanwhile waits for no more than this many texts (D). */
const TEXTS_AT_ONCE = 20;

/**
 * Sets the words that most sheets are made of, piece by piece, and throws the paper away: the fonts
 * are read then, the words shaped, and the code for setting compiled. Ends early where it is told so.
 */
export async function warmUp(
  { fontsFolder, language }: WarmUp,
  isOver: () => boolean,
): Promise<void> {
  const { frame, plan, feeding } = OWNER_WORDS[language];
  const texts = textsIn([frame, plan, feeding]);
  for (let from = 0; from < texts.length && !isOver(); from += TEXTS_AT_ONCE) {
    const definition = {
      content: [tableOf(texts.slice(from, from + TEXTS_AT_ONCE))],
      defaultStyle: BODY,
      styles: styles(palette(null)),
    };
    const paper = { definition, title: '', author: '', subject: '', language };
    await renderPdf(paper, { fontsFolder, instant: new Date(0) });
    // A print that was asked for is heard of between two pieces only.
    await new Promise((resolve) => setImmediate(resolve));
  }
}

function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}

/** Each text as the sheets set it: plain, small and bold, in cells. */
const tableOf = (texts: readonly string[]) => ({
  table: {
    widths: ['*', '*'],
    body: texts.map((text) => [
      text,
      {
        columns: [
          { text, bold: true },
          { text, style: 'small' },
        ],
      },
    ]),
  },
});
