import { describe, expect, it } from 'vitest';
import { buildRamp } from '../../../core/index.ts';
import { breachKey, useRampEdit } from '../../../renderer/plan/useRampEdit.ts';

const ramp = buildRamp({
  startDay: '2025-03-03',
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
});
const day = ramp.weeks[2]!.sessions[0]!.day;
const far = { kind: 'change', day, to: { kind: 'continuous', runMin: 45 } } as const;

describe('edits by hand', () => {
  it('begin without any, and without a broken rule', () => {
    const editing = useRampEdit(ramp, []);
    expect(editing.ramp.value).toBe(ramp);
    expect(editing.breaches.value).toEqual([]);
  });
  it('are checked as they are made, and taken back in turn', () => {
    const editing = useRampEdit(ramp, []);
    expect(editing.add(far)).toBe(true);
    expect(editing.open.value.map(({ code }) => code)).toContain('over-cap');
    editing.undo();
    expect(editing.edits.value).toEqual([]);
    expect(editing.open.value).toEqual([]);
  });
  it('need a written reason for each broken rule; blanks are none', () => {
    const editing = useRampEdit(ramp, []);
    editing.add(far);
    for (const breach of editing.open.value) editing.reasons[breachKey(breach)] = '  ';
    expect(editing.kept.value).toEqual([]);
    for (const breach of editing.open.value) editing.reasons[breachKey(breach)] = 'Did it before.';
    expect(editing.open.value).toEqual([]);
    expect(editing.kept.value.length).toBeGreaterThan(0);
    expect(editing.kept.value.every(({ reason }) => reason === 'Did it before.')).toBe(true);
  });
  it('that cannot be made say why and change nothing', () => {
    const editing = useRampEdit(ramp, []);
    expect(editing.add({ kind: 'remove', day: '2024-01-01' })).toBe(false);
    expect(editing.problem.value).toContain('2024-01-01');
    expect(editing.edits.value).toEqual([]);
    editing.add(far);
    expect(editing.problem.value).toBe('');
  });
  it('keep the reasons of an earlier edit', () => {
    const first = useRampEdit(ramp, []);
    first.add(far);
    for (const breach of first.open.value) first.reasons[breachKey(breach)] = 'Did it before.';
    const again = useRampEdit(first.ramp.value, first.breaches.value);
    expect(again.open.value).toEqual([]);
  });
});
