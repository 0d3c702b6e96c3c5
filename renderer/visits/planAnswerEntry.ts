import { checkRamp, editRamp, type Ramp, type Review } from '../../core/index.ts';
import type { PlanAnswer } from '../../electron/contract/plans/answer.ts';
import { decisionHead, rampSentence } from '../plans/rampText.ts';
import type { Shown } from '../units/shown.ts';
import { isOvertaken } from './useAnswerTo.ts';
import { fittingEdits, keptBreaches, type RampEntry } from '../plans/useRampEdit.ts';

/** The answer to the plan proposal while it is being given, with its changes by hand. */
export interface PlanAnswerEntry extends RampEntry {
  decision: PlanAnswer['decision'] | 'open' | 'declined';
  /** What was proposed when it was decided. */
  answeredTo: string;
  clearedByVetOn: string | null;
  /** A note on the plan; why, where the proposal is declined. */
  note: string;
}

export function blankPlanAnswer(): PlanAnswerEntry {
  return {
    decision: 'open',
    answeredTo: '',
    clearedByVetOn: null,
    note: '',
    edits: [],
    reasons: [],
  };
}

/** What of a review an answer is given to: its sentence, and each week's minutes after it. */
export function planKey(review: Review, shown: Shown): string {
  const { fromDay, ramp } = review;
  const sentence = `${decisionHead(review)}, from ${shown.day(fromDay)}: ${rampSentence(ramp, shown)}`;
  return [sentence, ...ramp.weeks.map((week) => week.runMinutes)].join('\n');
}

/** The sentence of the review that was answered. */
export const answeredSentence = ({ answeredTo }: Pick<PlanAnswerEntry, 'answeredTo'>): string =>
  answeredTo.split('\n')[0]!;

/** True while the plan was decided on another review than the present one. */
export const isPlanOvertaken = (entry: PlanAnswerEntry, review: Review, shown: Shown): boolean =>
  isOvertaken(entry, planKey(review, shown));

/** Whether the proposal is taken over, as it is or changed. */
export const takesProposal = ({ decision }: PlanAnswerEntry): boolean =>
  decision === 'accepted' || decision === 'edited';

/** How many changes by hand cannot be made in the proposal as it is now. */
export function misfits(proposed: Ramp, { decision, edits }: PlanAnswerEntry): number {
  return decision === 'edited' ? edits.length - fittingEdits(proposed, edits) : 0;
}

/** The plan that the answer leaves in force; null where the one before stays. */
export function answeredRamp(proposed: Ramp, entry: PlanAnswerEntry): Ramp | null {
  if (!takesProposal(entry)) return null;
  if (entry.decision === 'accepted' || misfits(proposed, entry) > 0) return proposed;
  return editRamp(proposed, entry.edits);
}

/** The answer as it is sent; null where the plan in force stays as it is. */
export function planAnswerOf(proposed: Ramp, entry: PlanAnswerEntry): PlanAnswer | null {
  const { clearedByVetOn, note, edits, reasons } = entry;
  const ramp = answeredRamp(proposed, entry);
  if (ramp === null) return null;
  if (entry.decision === 'accepted' || edits.length === 0) {
    return { decision: 'accepted', clearedByVetOn, note, edits: [], kept: [] };
  }
  const kept = keptBreaches(checkRamp(ramp), reasons) as PlanAnswer['kept'];
  return { decision: 'edited', clearedByVetOn, note, edits: edits as PlanAnswer['edits'], kept };
}

/** The visit's notes with what was declined, and why: no other part of the record would tell. */
export function notesWith(notes: string, entry: PlanAnswerEntry, proposal: string): string {
  if (entry.decision !== 'declined') return notes;
  const line = `Plan proposal declined (${proposal}): ${entry.note.trim()}`;
  return notes.trim() === '' ? line : `${notes.trimEnd()}\n${line}`;
}
