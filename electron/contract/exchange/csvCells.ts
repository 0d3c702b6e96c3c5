/**
 * What a spreadsheet would take for the beginning of a formula, behind any apostrophes of its own;
 * set to an East Asian language also the full-width signs.
 */
const WOULD_RUN = /^'*[=+\-@\t\r\n＝＋－＠]/;

/** A text as it may stand in a cell: one a spreadsheet would run gets an apostrophe in front. */
export function neutralCell(text: string): string {
  return WOULD_RUN.test(text) ? `'${text}` : text;
}

/** The text behind `neutralCell`, exactly as it was. */
export function restoredCell(cell: string): string {
  return cell.startsWith("'") && WOULD_RUN.test(cell) ? cell.slice(1) : cell;
}

/**
 * A text as a field of a table (RFC 4180). Which sign parts the fields is set by country or by hand,
 * so a text with any sign at all stands in quotes: a semicolon in a note begins no cell of its own.
 */
export const quotedField = (text: string): string =>
  /^[\p{L}\p{N}._-]*$/u.test(text) ? text : `"${text.replaceAll('"', '""')}"`;
