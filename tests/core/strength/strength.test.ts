import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CONTRAINDICATIONS,
  exerciseOf,
  EXERCISES,
  proposeStrength,
  PURPOSES,
  EXERCISE_STOPS,
  screenForRunning,
  strengthInputOf,
  type StrengthFindings,
  type StrengthInput,
} from '../../../core/index.ts';
import { holds } from '../../support/laws.ts';

const inputs: fc.Arbitrary<StrengthInput> = fc.record({
  stage: fc.constantFrom('walking' as const, 'ready' as const, 'running' as const),
  against: fc.subarray([...CONTRAINDICATIONS]),
  needs: fc.subarray([...PURPOSES]),
});
const runs = { seed: 1, numRuns: 500 };

describe('the catalogue', () => {
  // The twelve exercises of the trade (CP); on 3 to 5 days a week, WSAVA rehabilitation 2018 (S in part).
  it('holds twelve exercises, each with its purpose, dose, next step and stop sign', () => {
    expect(new Set(EXERCISES.map(({ id }) => id)).size).toBe(12);
    for (const exercise of EXERCISES) {
      expect(exercise.purposes.length).toBeGreaterThan(0);
      expect(exercise.sets * exercise.repeats).toBeGreaterThan(0);
      expect(exercise.daysPerWeek).toBeGreaterThanOrEqual(3);
      expect(exercise.daysPerWeek).toBeLessThanOrEqual(5);
      expect(exercise.harder).not.toBe('');
      expect(EXERCISE_STOPS[exercise.stop]).toMatch(/^Stop/);
    }
  });
});

describe('the proposal', () => {
  it('never holds what a finding speaks against, nor what lies above the stage', () => {
    const most = { walking: 1, ready: 2, running: 3, 'vet first': 0 };
    holds(
      fc.property(inputs, (input) => {
        for (const id of proposeStrength(input).exercises) {
          const { notFor, level } = exerciseOf(id)!;
          expect(notFor.filter((finding) => input.against.includes(finding))).toEqual([]);
          expect(level).toBeLessThanOrEqual(most[input.stage]);
        }
      }),
      runs,
    );
  });

  it('holds three to five different ones for every dog that may walk', () => {
    holds(
      fc.property(inputs, (input) => {
        const { exercises } = proposeStrength(input);
        expect(new Set(exercises).size).toBe(exercises.length);
        expect(exercises.length).toBeGreaterThanOrEqual(3);
        expect(exercises.length).toBeLessThanOrEqual(5);
      }),
      runs,
    );
    // A quarter of an hour: four where many are allowed (D).
    const free = { stage: 'running', against: [], needs: [...PURPOSES] } as const;
    expect(proposeStrength(free).exercises).toHaveLength(4);
  });

  it('says what was asked for and what was left out, each only where there is any', () => {
    const reasons = (needs: StrengthInput['needs'], against: StrengthInput['against']) =>
      proposeStrength({ stage: 'running', against, needs }).reasons;
    expect(reasons([], [])).toEqual([]);
    expect(reasons(['balance', 'trunk'], [])).toMatchObject([
      {
        code: 'strength-needs',
        params: { needs: 'balance, trunk' },
        mark: 'D',
        sources: ['ownDecision', 'rehabilitation2018'],
      },
    ]);
    expect(reasons([], ['spine'])).toMatchObject([
      { code: 'strength-against', params: { against: 'spine' } },
    ]);
    const both = reasons(['balance'], ['spine']).map(({ code }) => code);
    expect(both).toEqual(['strength-needs', 'strength-against']);
  });

  it('begins with what the findings ask for', () => {
    const first = (needs: StrengthInput['needs']) =>
      proposeStrength({ stage: 'running', against: [], needs }).exercises[0];
    expect(first(['balance'])).toBe('cushion-weight-shifts');
    expect(first(['hind limbs'])).toBe('sit-to-stand');
  });

  it('waits for the vet', () => {
    const proposal = proposeStrength({ stage: 'vet first', against: [], needs: ['balance'] });
    expect(proposal.exercises).toEqual([]);
    expect(proposal.reasons.map(({ code }) => code)).toEqual(['strength-vet-first']);
  });
});

describe('what the findings say', () => {
  const none = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
  const healthy: StrengthFindings = {
    disease: { joints: 'no', spine: 'no', heart: 'no', words: '' },
    injuries: [],
    surgery: 'none',
    lamenessClearances: [],
    palpation: {
      neck: 0,
      back: 0,
      'loin and pelvis': 0,
      'left fore': 0,
      'right fore': 0,
      'left hind': 0,
      'right hind': 0,
    },
    lamenessWalk: none,
    lamenessTrot: none,
    sitToStand: 'even',
    lieToStand: 'even',
  };
  const adult = screenForRunning({ ageMonths: 40, weightKg: 25, bcs: 5, signs: [] });
  const against = (found: Partial<StrengthFindings>, screening = adult) =>
    strengthInputOf({ ...healthy, ...found }, screening, false).against;
  const knee = {
    kind: 'injury',
    structure: 'Cranial cruciate ligament',
    side: 'left',
    day: '2026-01-10',
    done: '',
  } as const;
  const seen = (day: string) => ({
    vet: 'Dr Sample',
    day,
    gait: 'trot' as const,
    limb: 'leftHind' as const,
    grade: 1,
    scope: 'running',
  });

  it('leaves a healthy adult every exercise of its stage', () => {
    expect(against({})).toEqual([]);
  });

  it('keeps a spine out by disease, by injury and by pain when pressed', () => {
    expect(against({ disease: { ...healthy.disease, spine: 'yes' } })).toEqual(['spine']);
    expect(against({ injuries: [{ ...knee, structure: 'Lumbar disc' }] })).toEqual(['spine']);
    expect(against({ palpation: { ...healthy.palpation, back: 2 } })).toEqual(['spine']);
    expect(against({ palpation: { ...healthy.palpation, back: 1 } })).toEqual([]);
  });

  it('waits for a clearance of a cruciate that came after the injury', () => {
    const out = ['cruciate before clearance'];
    expect(against({ injuries: [knee] })).toEqual(out);
    const cleared = (day: string) => against({ injuries: [knee], lamenessClearances: [seen(day)] });
    expect(cleared('2026-01-09')).toEqual(out);
    expect(cleared('2026-01-10')).toEqual([]);
    expect(cleared('2026-03-01')).toEqual([]);
    const fore = { ...seen('2026-03-01'), limb: 'leftFore' as const };
    expect(against({ injuries: [knee], lamenessClearances: [fore] })).toEqual(out);
    expect(
      against({ injuries: [{ ...knee, day: null }], lamenessClearances: [seen('2026-03-01')] }),
    ).toEqual(out);
    expect(against({ injuries: [knee], surgery: 'cleared in writing' })).toEqual([]);
  });

  it('takes the plates as open while the dog is too young, or of unknown age', () => {
    const young = screenForRunning({ ageMonths: 8, weightKg: 25, bcs: 5, signs: [] });
    const unknown = screenForRunning({ weightKg: 25, bcs: 5, signs: [] });
    expect(against({}, young)).toEqual(['open growth plates']);
    expect(against({}, unknown)).toEqual(['open growth plates']);
  });

  it('asks for the limbs that are lame, and for balance in a senior', () => {
    const old = screenForRunning({ ageMonths: 130, weightKg: 25, bcs: 5, signs: [] });
    const lame = { ...healthy, lamenessTrot: { ...none, leftFore: 1 } };
    expect(strengthInputOf(lame, old, false).needs).toEqual(['fore limbs', 'balance']);
    expect(strengthInputOf({ ...healthy, sitToStand: 'leans left' }, adult, false).needs).toEqual([
      'hind limbs',
    ]);
  });
});
