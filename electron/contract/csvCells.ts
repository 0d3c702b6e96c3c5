/** What a spreadsheet would take for the beginning of a formula, behind any apostrophes of its own. */
const WOULD_RUN = /^'*[=+\-@\t\r]/;

/** A text as it may stand in a cell: one a spreadsheet would run gets an apostrophe in front. */
export function neutralCell(text: string): string {
  return WOULD_RUN.test(text) ? `'${text}` : text;
}

/** The text behind `neutralCell`, exactly as it was. */
export function restoredCell(cell: string): string {
  return cell.startsWith("'") && WOULD_RUN.test(cell) ? cell.slice(1) : cell;
}
