import type { Node, TDocumentDefinitions } from 'pdfmake/interfaces';
import { MARGIN, PAPER_SIZE, type Paper } from '../theme.ts';

type BreakRule = NonNullable<TDocumentDefinitions['pageBreakBefore']>;

/** Room, in points, that a heading and three lines under it need. */
const HEADING_AND_LINES = 72;

/**
 * Moves a heading over running text to the next page when fewer than three lines would stand under
 * it. What must stay together as a block is made unbreakable instead (`section`), and a heading over
 * a long table is the table's first header row: pdfmake's list of following nodes gives positions
 * inside such blocks from the block's own top, so it cannot tell what follows on the page.
 */
export function breakBeforeOrphan(paper: Paper): BreakRule {
  const lastStart = PAPER_SIZE[paper].height - MARGIN.bottom - HEADING_AND_LINES;
  return (node: Node) => node.headlineLevel !== undefined && node.startPosition.top > lastStart;
}
