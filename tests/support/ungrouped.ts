/** What is written in digits and counts nothing: days, telephones, chips, registers, references. */
const NO_COUNTS: readonly RegExp[] = [
  /\b\d{4}-\d\d-\d\d\b/g,
  /\b\d\d[./]\d\d[./]\d{4}\b/g,
  /\b\d{15}\b/g,
  /\+?\b0\d[\d ]*/g,
  // Volume and pages of a journal, a report's or a standard's number, an identifier.
  /[:;–-]\d{4,}\b/g,
  /\b(?:ISO|SR|nr\.?) \d{4,}(?:-\d+)?/g,
  /[\p{L}_#/]\d[\w-]*/gu,
];
/** Four digits that name a year rather than count something. */
const YEAR = /^(?:19|20)\d\d$/;
const COUNTED =
  /^[\s\u00a0\u202f]*(?:to|–|kcal|kJ|g|kg|lb|m|km|mi|ft|min|h|s|steps|times|dogs|visits|rows|files|points|sessions|weighings|records)\b/;

/** Numbers of four digits and more whose thousands are not set apart, with what follows them. */
export function ungroupedIn(text: string): string[] {
  const left = NO_COUNTS.reduce((rest, pattern) => rest.replace(pattern, ' '), text);
  return [...left.matchAll(/(?<![\d.,·])\d{4,}(?![\d,])/g)]
    .filter(([number], index, all) => {
      const after = left.slice(all[index]!.index + number.length);
      return !YEAR.test(number) || COUNTED.test(after);
    })
    .map(({ 0: number, index }) => left.slice(index, index + number.length + 16).trim());
}
