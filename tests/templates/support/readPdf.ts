import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { TextItem } from 'pdfjs-dist/types/src/display/api.js';

/** A piece of text and the box it fills, in points from the top left corner of its page. */
export interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly TextBox[];
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  /** All text, one line for each line on paper. */
  readonly text: string;
  readonly info: Readonly<Record<string, unknown>>;
}

/** Share of the type size above and below the base line that letters fill. */
const ASCENT = 0.75;
const DESCENT = 0.21;

function box(item: TextItem, pageHeight: number): TextBox {
  const [, , , size, x, y] = item.transform as [number, number, number, number, number, number];
  const base = pageHeight - y;
  return {
    text: item.str,
    left: x,
    right: x + item.width,
    top: base - size * ASCENT,
    bottom: base + size * DESCENT,
  };
}

/** Reads a PDF with a reader that had no part in writing it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  const lines: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const items = (await page.getTextContent()).items as TextItem[];
    const boxes = items.filter((item) => item.str.trim() !== '').map((item) => box(item, height));
    pages.push({ width, height, boxes });
    lines.push(`--- page ${number}`, ...textLines(boxes));
  }
  const { info } = await document.getMetadata();
  await document.loadingTask.destroy();
  return { pages, text: lines.join('\n'), info: info as Record<string, unknown> };
}

/** Joins boxes on one base line, from left to right. */
function textLines(boxes: readonly TextBox[]): readonly string[] {
  const rows = new Map<number, TextBox[]>();
  for (const item of boxes) {
    const key = [...rows.keys()].find((y) => Math.abs(y - item.bottom) < 2.5) ?? item.bottom;
    rows.set(key, [...(rows.get(key) ?? []), item]);
  }
  return [...rows.entries()]
    .sort(([a], [b]) => a - b)
    .map(([, row]) =>
      row
        .sort((a, b) => a.left - b.left)
        .map((item) => item.text.replaceAll('\u00a0', ' '))
        .join(' | '),
    );
}
