import type { Node, NodeQueries, TDocumentDefinitions } from 'pdfmake/interfaces';
import { MARGIN, PAPER_SIZE, type Paper } from '../theme.ts';

type BreakRule = NonNullable<TDocumentDefinitions['pageBreakBefore']>;

/**
 * Moves a heading to the next page when nothing of what it heads would stand under it. Footers come
 * after the text in pdfmake's list of nodes, so they are told apart by where they stand.
 */
export function breakBeforeOrphan(paper: Paper): BreakRule {
  const lastLine = PAPER_SIZE[paper].height - MARGIN.bottom;
  const inBody = (node: Node) =>
    node.startPosition.top >= MARGIN.top - 1 && node.startPosition.top < lastLine;
  return (node: Node, queries: NodeQueries) => {
    if (node.headlineLevel === undefined) return false;
    return !queries.getFollowingNodesOnPage().some(inBody);
  };
}
