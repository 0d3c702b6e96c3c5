import type { Content } from 'pdfmake/interfaces';
import type { Provenance } from '../../core/figure.ts';
import type { EvidenceLevel } from '../../core/origin.ts';
import { raised } from '../../core/quantityText.ts';
import { source, type Source, type SourceId } from '../../core/sources.ts';
import { fill } from '../format.ts';
import { together } from './layout.ts';
import type { OwnerWords } from '../words/words.ts';

/** The source ids of several figures and rules, each once, in order of first use. */
function uniqueSources(items: readonly Provenance[]): readonly SourceId[] {
  return [...new Set(items.flatMap((item) => item.sources))];
}

/** "[B]" after a sentence; explained at the end of the sheet. */
export const levelMark = (level: EvidenceLevel): string => `[${level}]`;

function named(id: SourceId, style: 'short' | 'reference', words: OwnerWords['sources']): string {
  const entry: Source = source(id);
  if (style === 'short') return words.names[id] ?? entry.short;
  const name = raised(entry.reference);
  if (entry.caveat === undefined) return name;
  const caveat = words.caveats[entry.caveat] ?? entry.caveat;
  return fill(words.caveat, { source: name, caveat });
}

/** The footnote of an owner's sheet: what the letters mean, and the sources in short. */
export function sourceNote(items: readonly Provenance[], words: OwnerWords['sources']): Content {
  const names = uniqueSources(items).map((id) => named(id, 'short', words));
  return {
    unbreakable: true,
    margin: [0, 9, 0, 0],
    stack: [
      { text: words.title, style: 'foot', bold: true },
      { text: words.levels, style: 'foot' },
      ...(names.length > 0 ? [{ text: names.join('; '), style: 'foot' }] : []),
    ],
  };
}

/** So many references stay with what stands above the list, and so many with what comes below it. */
const KEPT = 3;

/**
 * The end of a sheet for a reader of the trade: `last`, and full references below it, one a line. The
 * list may run over pages, but neither it nor `last` leaves a line or two alone on one.
 */
export function referencesBelow(
  last: readonly Content[],
  items: readonly Provenance[],
  title: string,
  words: OwnerWords['sources'],
): { readonly body: readonly Content[]; readonly end: readonly Content[] } {
  const list = uniqueSources(items).map((id) => ({
    text: named(id, 'reference', words),
    style: 'foot',
  }));
  const numbered = (from: number, to: number): Content => ({
    ol: list.slice(from, to),
    start: from + 1,
    style: 'foot',
  });
  const above: readonly Content[] = [
    ...last,
    { text: title, style: 'subheading', margin: [0, 9, 0, 1] },
    { text: words.levels, style: 'foot', margin: [0, 0, 0, 2] },
  ];
  if (list.length <= 2 * KEPT) return { body: [], end: [...above, numbered(0, list.length)] };
  const tail = list.length - KEPT;
  return {
    body: [together([...above, numbered(0, KEPT)]), numbered(KEPT, tail)],
    end: [numbered(tail, list.length)],
  };
}
