import { z } from 'zod';
import { bundleRecords, BUNDLE_KINDS, BUNDLE_VERSION } from '../../contract/exchange/bundle.ts';

/** `schema.json`: JSON Schema (draft 2020-12) of `records.json`, made from what the program checks. */
export function bundleSchema(): object {
  return z.toJSONSchema(bundleRecords, { io: 'input', unrepresentable: 'any' });
}

/** `README.txt`, for whoever opens the bundle without the program. */
export const BUNDLE_README = `What this is
============
Everything Trotwell keeps about one owner, or about all owners of a practice, in open forms.
Form: open bundle, version ${BUNDLE_VERSION}.

manifest.json   what the bundle is, when it was made, how many records it holds, the SHA-256 of
                every other file, in hex, and which attached files were missing when it was made
records.json    all records: ${BUNDLE_KINDS.join(', ')}
schema.json     JSON Schema of records.json
tables/*.csv    the same records as tables, one file a kind
files/          photos and letters, each named by the SHA-256 of its content

How to read it
--------------
All files are UTF-8. Days are written YYYY-MM-DD. Times are UTC. Weights are in kg, lengths in cm,
food in g and kcal a day. Records name each other by their id: a dog names its owner in clientId,
a visit its dog in dogId. What was put into the bin has a time in binnedAt.
Sentences of the program may mark their amounts with braces, {920 kcal}: read them without.

The tables separate columns by commas (RFC 4180). A text that a spreadsheet would run as a formula
(it begins with = + - @, a tab or a line break) has an apostrophe in front; take it off to get the
text as it was entered. Lists stand in their cell as JSON.

history says what was done to a record after it was first kept; "before" is what it was until then.

This bundle holds personal data. Keep it as carefully as the records themselves, and delete it when
it is no longer needed.
`;
