import { RED_FLAGS, buildRamp, screenForRunning, type RampRequest } from '../../../core/index.ts';
import type { RunningPlanData } from '../../../templates/index.ts';
import type { Paper } from '../../../templates/theme.ts';
import { context, emptyFindings, findings, longNames, SET_ASIDE, warmDog } from './people.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

const request: RampRequest = {
  startDay: '2025-12-01',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
};

function screened(data: Pick<RunningPlanData, 'findings' | 'dog'>): RunningPlanData['screening'] {
  const { findings: found, dog } = data;
  return screenForRunning({
    day: found.day,
    birthDay: dog.birthDay,
    weightKg: found.weightKg ?? undefined,
    bcs: found.bcs ?? undefined,
    lameness: { walk: found.lamenessWalk, trot: found.lamenessTrot },
    signs: found.weightKg === null ? undefined : [],
    walkBase: found.weightKg === null ? 'not tested' : 'passed',
    consent: found.consent,
    overrides: found.weightKg === null ? [] : SET_ASIDE,
  });
}

/** A plan that core made of the invented dog's record. */
export function plan(paper: Paper, changes: Partial<RampRequest> = {}): RunningPlanData {
  const base = context(paper);
  return {
    ...base,
    findings,
    screening: screened({ findings, dog: base.dog }),
    ramp: buildRamp({ ...request, ...changes }),
    heat: warmDog,
  };
}

/** The slowest start and a far goal: about 40 weeks. */
export function longPlan(paper: Paper): RunningPlanData {
  return plan(paper, {
    start: 'post-injury',
    goal: { continuousMinutes: 60 },
  });
}

/** At week 14, with the owner's pace, the owner's start, and pull and speed after the goal. */
export function onwardPlan(paper: Paper): RunningPlanData {
  const base = plan(paper, {
    goal: { distanceKm: 5, paceMinPerKm: 6.5 },
    ownerMinutes: 8,
    laterStages: ['pull', 'hills', 'speed'],
  });
  const onward = {
    fromWeek: 14,
    outingsDone: 37,
    outingsPlanned: 39,
    longestMinutes: 21,
    nextDay: base.ramp!.weeks[13]!.sessions[0]!.day,
  };
  return { ...base, onward };
}

/** A dog that may only walk, and the brisk walks that lead it to the walk base. */
export function walks(paper: Paper): RunningPlanData {
  const base = plan(paper, { programme: 'walking', walkMinutesNow: 15 });
  const screening = screenForRunning({
    day: base.findings.day,
    birthDay: base.dog.birthDay,
    weightKg: 24.2,
    bcs: 6,
    lameness: { walk: SOUND, trot: SOUND },
    signs: [],
    walkBase: 'failed',
    consent: base.findings.consent,
  });
  const sound = { ...base.findings, lamenessWalk: SOUND, lamenessTrot: SOUND, gaitNote: '' };
  return { ...base, findings: sound, screening };
}

/** Nothing known: no plan can be made yet. */
export function noPlan(paper: Paper): RunningPlanData {
  const base = context(paper);
  const screening = screened({ findings: emptyFindings, dog: base.dog });
  return { ...base, findings: emptyFindings, screening, ramp: null };
}

export function longNamesPlan(paper: Paper): RunningPlanData {
  return { ...plan(paper), ...longNames(paper) };
}

/** Every warning sign at once, and nothing else known: as many reasons as a screening can give. */
export function allSigns(paper: Paper): RunningPlanData {
  const base = noPlan(paper);
  const signs = RED_FLAGS.map(({ id }) => id);
  return {
    ...base,
    screening: screenForRunning({ signs, surgery: 'not cleared', bcs: 9, shortNosed: true }),
  };
}
