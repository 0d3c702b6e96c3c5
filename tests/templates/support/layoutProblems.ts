import { MARGIN } from '../../../templates/theme.ts';
import type { ReadPage, TextBox } from './readPdf.ts';

/** Text may touch the edge of its box by this much, in points, before it counts. */
const SLACK = 0.8;

/** Labels have no margins of a page; printers leave this much of the edge white. */
const LABEL_EDGE = 9;

function outside(page: ReadPage, box: TextBox, labels: boolean): boolean {
  if (labels) {
    return (
      Math.min(box.left, box.top, page.width - box.right, page.height - box.bottom) < LABEL_EDGE
    );
  }
  return (
    box.left < MARGIN.left - SLACK ||
    box.right > page.width - MARGIN.right + SLACK ||
    box.top < 24 ||
    box.bottom > page.height - 8
  );
}

function overlap(a: TextBox, b: TextBox): boolean {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return across > SLACK && down > SLACK;
}

/** Text that leaves the margins or lies over other text, one sentence each; empty when all is well. */
export function layoutProblems(
  pages: readonly ReadPage[],
  { labels = false }: { readonly labels?: boolean } = {},
): readonly string[] {
  return pages.flatMap((page, index) => {
    const where = `page ${index + 1}`;
    const out = page.boxes
      .filter((box) => outside(page, box, labels))
      .map((box) => `${where}: "${box.text}" leaves the margins`);
    const over = page.boxes.flatMap((a, i) =>
      page.boxes
        .slice(i + 1)
        .filter((b) => overlap(a, b))
        .map((b) => `${where}: "${a.text}" lies over "${b.text}"`),
    );
    return [...out, ...over];
  });
}
