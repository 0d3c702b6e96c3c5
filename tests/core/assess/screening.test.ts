import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/index.ts';
import type { AssessedVisit } from '../../../core/assess/types.ts';
import { grownDog, visit } from './visits.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
const UNSEEN = { leftFore: null, rightFore: null, leftHind: null, rightHind: null };
const LAME = { ...SOUND, leftHind: 2 };

const found = (...visits: AssessedVisit[]) =>
  assess({ dog: grownDog, visits, foodDecisions: [], day: visits.at(-1)!.day })!.screening.found;

describe('a limb that was lame when it was last looked at', () => {
  it('stands as lame until it is looked at again', () => {
    const lame = visit('2026-03-02', 27, { lamenessTrot: LAME });
    const unseen = visit('2026-03-16', 27, { lamenessWalk: UNSEEN, lamenessTrot: UNSEEN });
    expect(found(lame)).toBe('vet first');
    expect(found(lame, unseen)).toBe('vet first');
    expect(found(lame, visit('2026-03-16', 27))).toBe('ready to start');
    expect(found(lame, visit('2026-03-09', 27), unseen)).toBe('ready to start');
  });

  it('is asked of each limb by itself', () => {
    const lame = visit('2026-03-02', 27, { lamenessTrot: LAME });
    const others = { ...SOUND, leftHind: null };
    expect(found(lame, visit('2026-03-16', 27, { lamenessTrot: others }))).toBe('vet first');
  });
});
