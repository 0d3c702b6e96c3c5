import { reactive } from 'vue';
import { describe, expect, it } from 'vitest';
import { buildRamp, type Breach } from '../../../core/index.ts';
import {
  blankRampEntry,
  breachKey,
  fittingEdits,
  useRampEdit,
} from '../../../renderer/plans/useRampEdit.ts';

const ramp = buildRamp({
  startDay: '2025-03-03',
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
});
const day = ramp.weeks[2]!.sessions[0]!.day;
const far = { kind: 'change', day, to: { kind: 'continuous', runMin: 45 } } as const;

const begin = (plan = ramp, keptBefore: readonly Breach[] = []) => {
  const entry = reactive(blankRampEntry(keptBefore));
  return { entry, ...useRampEdit(plan, entry) };
};

describe('edits by hand', () => {
  it('begin without any, and without a broken rule', () => {
    const editing = begin();
    expect(editing.ramp.value).toBe(ramp);
    expect(editing.breaches.value).toEqual([]);
  });
  it('are checked as they are made, and taken back in turn', () => {
    const editing = begin();
    expect(editing.add(far)).toBe(true);
    expect(editing.open.value.map(({ code }) => code)).toContain('over-cap');
    editing.undo();
    expect(editing.entry.edits).toEqual([]);
    expect(editing.open.value).toEqual([]);
  });
  it('need a written reason for each broken rule; blanks are none', () => {
    const editing = begin();
    editing.add(far);
    for (const breach of editing.open.value) editing.giveReason(breachKey(breach), '  ');
    expect(editing.kept.value).toEqual([]);
    for (const breach of editing.open.value)
      editing.giveReason(breachKey(breach), 'Did it before.');
    expect(editing.open.value).toEqual([]);
    expect(editing.kept.value.length).toBeGreaterThan(0);
    expect(editing.kept.value.every(({ reason }) => reason === 'Did it before.')).toBe(true);
  });
  it('that cannot be made say why and change nothing', () => {
    const editing = begin();
    expect(editing.add({ kind: 'remove', day: '2024-01-01' })).toBe(false);
    expect(editing.problem.value).toContain('2024-01-01');
    expect(editing.entry.edits).toEqual([]);
    editing.add(far);
    expect(editing.problem.value).toBe('');
  });
  it('keep the reasons of an earlier edit', () => {
    const first = begin();
    first.add(far);
    for (const breach of first.open.value) first.giveReason(breachKey(breach), 'Did it before.');
    const again = begin(first.ramp.value, first.breaches.value);
    expect(again.open.value).toEqual([]);
  });
  it('kept as a draft fit the plan they were made for, and no other further than they go', () => {
    const gone = { kind: 'remove', day: '2024-01-01' } as const;
    expect(fittingEdits(ramp, [])).toBe(0);
    expect(fittingEdits(ramp, [far, far])).toBe(2);
    expect(fittingEdits(ramp, [far, gone, far])).toBe(1);
    expect(fittingEdits(ramp, [gone])).toBe(0);
    // What an older or spoilt draft may hold.
    expect(fittingEdits(ramp, [far, null as never])).toBe(1);
  });
});
