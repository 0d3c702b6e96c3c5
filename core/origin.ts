import type { SourceId } from './sources.ts';

/**
 * How sure we are, as shown to the practitioner: A study in dogs, B human trial or cohort,
 * C textbook, guideline or sport rule, D common practice or our own choice.
 */
export type EvidenceLevel = 'A' | 'B' | 'C' | 'D';

/**
 * How the program came by a figure: S read in the source, M recalled from memory, C our arithmetic
 * from a stated formula, CP common practice without a source, D our own editable decision.
 */
export type Mark = 'S' | 'M' | 'C' | 'CP' | 'D';

/** What stands behind a number: how sure we are, how we came by it, and from where. */
export interface Origin {
  readonly evidence: EvidenceLevel;
  readonly mark: Mark;
  readonly sources: readonly SourceId[];
}

/** What stands behind a number, in one line. */
export const from = (evidence: EvidenceLevel, mark: Mark, ...sources: SourceId[]): Origin => ({
  evidence,
  mark,
  sources,
});

/** Our own editable decision. */
export const OWN = from('D', 'D', 'ownDecision');

/** Common practice of the trade, without a source. */
export const PRACTICE = from('D', 'CP', 'commonPractice');
