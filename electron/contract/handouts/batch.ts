import type { HandoutKind } from '../records.ts';

/** One sheet of one dog in a batch: printed, or why not. */
export interface BatchSheet {
  readonly kind: HandoutKind;
  /** Pages of the sheet; 0 where it was not printed. */
  readonly pages: number;
  /** The sentence that says why it was not printed; null where it was. */
  readonly problem: string | null;
}

/** What came of one dog in a batch. */
export interface BatchDog {
  readonly dogId: string;
  readonly sheets: readonly BatchSheet[];
}

/** What came of printing sheets for several dogs. */
export interface BatchPrinted {
  /** Names the zip archive with the PDFs; null where no sheet could be printed. */
  readonly token: string | null;
  readonly fileName: string;
  /** In the order asked for. */
  readonly dogs: readonly BatchDog[];
}
