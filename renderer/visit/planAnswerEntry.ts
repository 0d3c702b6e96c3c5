import type { KeptBreach, RampEdit } from '../../core/index.ts';
import type { PlanAnswer } from '../../electron/contract/planAnswer.ts';

/** The answer to the plan proposal while it is being given. */
export interface PlanAnswerEntry {
  decision: PlanAnswer['decision'] | 'open' | 'declined';
  clearedByVetOn: string | null;
  /** A note on the plan; why, where the proposal is declined. */
  note: string;
  edits: RampEdit[];
  kept: KeptBreach[];
}

export function blankPlanAnswer(): PlanAnswerEntry {
  return { decision: 'open', clearedByVetOn: null, note: '', edits: [], kept: [] };
}

/** The answer as it is sent; null where the plan in force stays as it is. */
export function planAnswerOf(entry: PlanAnswerEntry): PlanAnswer | null {
  const { decision, clearedByVetOn, note, edits, kept } = entry;
  if (decision === 'open' || decision === 'declined') return null;
  const changed = decision === 'edited';
  return {
    decision,
    clearedByVetOn,
    note,
    edits: changed ? (edits as PlanAnswer['edits']) : [],
    kept: changed ? (kept as PlanAnswer['kept']) : [],
  };
}

/** The visit's notes with what was declined, and why: no other part of the record would tell. */
export function notesWith(notes: string, entry: PlanAnswerEntry, proposal: string): string {
  if (entry.decision !== 'declined') return notes;
  const line = `Plan proposal declined (${proposal}): ${entry.note.trim()}`;
  return notes.trim() === '' ? line : `${notes.trimEnd()}\n${line}`;
}
