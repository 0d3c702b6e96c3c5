import type { VisitSheet } from '../../../templates/index.ts';
import type { HandoutKind, Language } from '../../contract/records.ts';
import type { Material } from './material.ts';
import type { PrintJob } from './print.ts';
import type { Printer } from './printer.ts';
import { sheetFor } from './sheets.ts';

/** What printing needs beside the records. */
export interface PrintRoom {
  readonly printer: Printer;
  /** The folder with the fonts of the handouts. */
  readonly fontsFolder: string;
}

/** Sheets of one dog (at least one) as one file, ready for the printer. */
export function printJob(
  material: Material,
  kinds: readonly HandoutKind[],
  { language, fontsFolder }: { readonly language: Language; readonly fontsFolder: string },
): PrintJob {
  return {
    context: material.context,
    sheets: kinds.map((kind) => sheetFor(kind, material)) as [VisitSheet, ...VisitSheet[]],
    language,
    fontsFolder,
    // The day decides, so that the same record gives the same file all day.
    instant: new Date(`${material.context.day}T12:00:00Z`),
  };
}
