import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import { csvHead, csvLines } from './csvWrite.ts';
import { AT_ONCE } from './bundleRecords.ts';

// A large practice comes to a hundred megabytes of text: it is made a piece at a time, and other
// questions are answered between two pieces.

/** The records as JSON, to the letter what `JSON.stringify(records, null, 1)` makes of them. */
export function* jsonPieces(records: BundleRecords): Generator<string> {
  let lead = '{\n';
  for (const [kind, list] of Object.entries(records)) {
    yield `${lead} ${JSON.stringify(kind)}: [`;
    lead = ',\n';
    for (const some of slices(list)) {
      const texts = some.records.map((record) => indented(JSON.stringify(record, null, 1)));
      yield `${some.first ? '' : ','}\n  ${texts.join(',\n  ')}`;
    }
    yield list.length === 0 ? ']' : '\n ]';
  }
  yield '\n}\n';
}

/** A line break inside a string is written as an escape, so that every one here is of the layout. */
const indented = (json: string): string => json.replaceAll('\n', '\n  ');

/** A table of records as CSV. */
export function* csvPieces(
  columns: readonly string[],
  records: readonly object[],
): Generator<string> {
  yield csvHead(columns);
  for (const some of slices(records)) yield csvLines(columns, some.records);
}

function* slices(list: readonly object[]) {
  for (let at = 0; at < list.length; at += AT_ONCE) {
    yield { records: list.slice(at, at + AT_ONCE), first: at === 0 };
  }
}
