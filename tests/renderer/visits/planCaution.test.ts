import { describe, expect, it } from 'vitest';
import { screenForRunning, type ScreeningInput } from '../../../core/index.ts';
import { standingOf } from '../../../renderer/visits/planCaution.ts';
import { READY } from '../../core/readiness/inputs.ts';

const screened = (more: Partial<ScreeningInput>) => screenForRunning({ ...READY, ...more });

describe('a plan that is drawn up at the visit', () => {
  it('is kept where nothing stands against it', () => {
    expect(standingOf(screened({}), 'running')).toBe('It is kept with the visit.');
  });

  it('is not said to be kept with a goal that is refused', () => {
    expect(standingOf(screened({ bcs: 6, goalMinutes: 32.5 }), 'running')).toMatch(
      /^It cannot be kept with this goal/,
    );
  });

  it('says again that runs must wait, but lets the walks begin', () => {
    const walking = screened({ walkBase: 'failed' });
    expect(walking.outcome).toBe('walking only');
    expect(standingOf(walking, 'running')).toMatch(/^The screening says walking only/);
    expect(standingOf(walking, 'walking')).toBe('It is kept with the visit.');
  });

  it('says again that the vet comes first', () => {
    const first = screened({ signs: ['fever'] });
    expect(first.outcome).toBe('vet first');
    expect(standingOf(first, 'walking')).toMatch(/^The screening says vet first/);
  });
});
