import { describe, expect, it } from 'vitest';
import { buildRamp, weekAt } from '../../../core/index.ts';
import { minutes, rampSentence, sessionText } from '../../../renderer/plans/rampText.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';

const shown = shownWith(DEFAULT_CHOICES);
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ');
const ramp = buildRamp({
  startDay: '2025-03-31',
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
});

describe('a plan in words', () => {
  it('names the first outing as it is run', () => {
    // Unconditioned start: 4 × (1 min run, 3 min walk), our own choice (D).
    expect(plain(sessionText(ramp.weeks[0]!.sessions[0]!))).toBe('4 × (1 min run, 3 min walk)');
  });
  it('says when the goal is reached', () => {
    expect(plain(rampSentence(ramp, shown))).toContain('30 min without a break first on');
  });
  it('says what is within reach of an event that comes too soon', () => {
    const soon = buildRamp({ ...ramp.request, eventDay: '2025-05-12' });
    const text = plain(rampSentence(soon, shown));
    expect(text).toContain('cannot be reached in that time');
    expect(text).toContain('Within reach by then');
  });
  it('shows minutes as half minutes, rounded down', () => {
    expect(plain(minutes(20.04))).toBe('20 min');
    expect(plain(minutes(9.96))).toBe('9.5 min');
  });
});

describe('the week of today', () => {
  it('is none before the plan begins and after it ends', () => {
    expect(weekAt(ramp, '2025-03-30')).toBeNull();
    expect(weekAt(ramp, '2030-01-01')).toBeNull();
  });
  it('is the one that holds the day', () => {
    expect(weekAt(ramp, ramp.weeks[0]!.startDay)?.number).toBe(1);
    expect(weekAt(ramp, ramp.weeks[2]!.startDay)?.number).toBe(3);
  });
  it('lasts to the end of its last outing', () => {
    const last = ramp.weeks.at(-1)!;
    expect(weekAt(ramp, last.sessions.at(-1)!.day)?.number).toBe(last.number);
  });
});
