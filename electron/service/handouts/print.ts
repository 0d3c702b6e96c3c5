import {
  enPractice,
  OWNER_WORDS,
  visitBundle,
  type HandoutContext,
  type VisitSheet,
} from '../../../templates/index.ts';
import { renderPdf } from '../../../templates/render.ts';
import type { Language } from '../../contract/records.ts';

/** What is to be printed: plain data, so that it can go to another thread. */
export interface PrintJob {
  readonly context: HandoutContext;
  readonly sheets: readonly [VisitSheet, ...VisitSheet[]];
  /** Language of the owner's sheets. */
  readonly language: Language;
  readonly fontsFolder: string;
  /** Written into the file as its creation date. */
  readonly instant: Date;
}

export interface Printed {
  readonly base64: string;
  readonly pages: number;
}

/** Sets the sheets and makes one PDF of them. @throws Error when a font is missing. */
export async function print(job: PrintJob): Promise<Printed> {
  const document = visitBundle(job.context, job.sheets, {
    owner: OWNER_WORDS[job.language],
    // Between professionals the wording is English; the numbers in it are written the same way.
    professional: { practice: enPractice, owner: OWNER_WORDS.en },
  });
  const { bytes, pages } = await renderPdf(document, job);
  return { base64: Buffer.from(bytes).toString('base64'), pages };
}
