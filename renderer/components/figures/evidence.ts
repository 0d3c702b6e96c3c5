import type { Provenance } from '../../../core/figure.ts';
import type { EvidenceLevel, Mark } from '../../../core/origin.ts';
import { source } from '../../../core/sources.ts';

/** The evidence levels in words, as the practitioner reads them. */
export const EVIDENCE: Record<EvidenceLevel, string> = {
  A: 'study in dogs',
  B: 'human trial or cohort',
  C: 'textbook, guideline or sport rule',
  D: 'common practice or our own choice',
};

/** The marks in words: how a figure was come by. */
export const MARKS: Record<Mark, string> = {
  S: 'read in the source',
  M: 'from memory, not re-read',
  C: 'calculated from a stated formula',
  CP: 'common practice, no published source',
  D: 'our own choice',
};

/** How sure a figure is and how it was come by; where nothing is published, the mark says both. */
export function evidenceText({ evidence, mark }: Pick<Provenance, 'evidence' | 'mark'>): string {
  const unpublished = evidence === 'D' && (mark === 'D' || mark === 'CP');
  return `${evidence}: ${unpublished ? MARKS[mark] : `${EVIDENCE[evidence]}; ${MARKS[mark]}`}`;
}

/** Each source as one printed line, with its caveat. */
export function sourceLines(provenance: Provenance): readonly string[] {
  return provenance.sources.map((id) => {
    const { reference, caveat } = source(id);
    return caveat === undefined ? reference : `${reference} (${caveat})`;
  });
}

/** What a summary says of the rules that stand behind a reason: "; the 2 rules behind it". */
export function rulesBehind({ rules = [] }: Provenance): string {
  if (rules.length === 0) return '';
  return rules.length === 1 ? '; the rule behind it' : `; the ${rules.length} rules behind it`;
}
