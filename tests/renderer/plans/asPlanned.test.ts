import { describe, expect, it } from 'vitest';
import { buildRamp, type RampSession } from '../../../core/index.ts';
import { allAsPlanned } from '../../../renderer/plans/asPlanned.ts';
import { outcomeOnly, type ToldSession } from '../../../renderer/plans/timeline.ts';

const [model] = buildRamp({
  startDay: '2025-03-03',
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 20 },
}).weeks[0]!.sessions;
const session = (day: string): RampSession => ({ ...model!, day });
const told = (day: string, result: ToldSession['result'] = null): ToldSession => ({
  session: session(day),
  result,
});
const TODAY = '2025-03-29';

describe('all done as planned', () => {
  it('is done, and normal the next day, for every session that is asked for', () => {
    const results = allAsPlanned([told('2025-03-25'), told('2025-03-27')], TODAY);
    expect(results.map(({ day, outcome, nextDay }) => [day, outcome, nextDay])).toEqual([
      ['2025-03-25', 'done', 'normal'],
      ['2025-03-27', 'done', 'normal'],
    ]);
  });

  it('says nothing of a next day that is still to come, nor of a session to come', () => {
    const results = allAsPlanned([told(TODAY), told('2025-03-31')], TODAY);
    expect(results).toEqual([{ ...outcomeOnly(TODAY, 'done') }]);
  });

  it('keeps what was told already, and fills in the next day alone', () => {
    const short = { ...outcomeOnly('2025-03-25', 'shortened'), runMinutes: 3 };
    const missed = outcomeOnly('2025-03-27', 'missed');
    const results = allAsPlanned([told('2025-03-25', short), told('2025-03-27', missed)], TODAY);
    expect(results).toEqual([{ ...short, nextDay: 'normal' }]);
  });

  it('leaves a session with a sign that stops running to be told by itself', () => {
    const lame = { ...outcomeOnly('2025-03-25', 'shortened'), signs: ['lameness' as const] };
    expect(allAsPlanned([told('2025-03-25', lame)], TODAY)).toEqual([]);
  });
});
