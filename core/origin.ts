import type { EvidenceLevel, Mark, Origin } from './figure.ts';
import type { SourceId } from './sources.ts';

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
