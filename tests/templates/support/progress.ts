import {
  addDays,
  type Reason,
  lossCorridor,
  projectTarget,
  weightTrend,
  type Weighing,
} from '../../../core/index.ts';
import type { ProgressReportData } from '../../../templates/index.ts';
import type { Paper } from '../../../templates/theme.ts';
import { meals } from './meals.ts';
import { context, findings, longNames, sound } from './people.ts';

const weighings: readonly Weighing[] = [
  { day: '2025-12-01', weightKg: 24.2 },
  { day: '2025-12-15', weightKg: 23.9 },
  { day: '2025-12-29', weightKg: 23.5 },
  { day: '2026-01-12', weightKg: 24.1, method: 'other scale' },
  { day: '2026-01-26', weightKg: 23.0 },
  { day: '2026-02-09', weightKg: 22.7 },
];

/** A proposal that was taken as it was. */
const answered = { referred: false, asProposed: true, note: '', newFood: null };

/** Ten weeks on: slimmer, sound, running. */
export function progress(
  paper: Paper,
  changes: Partial<ProgressReportData> = {},
): ProgressReportData {
  const trend = weightTrend(weighings);
  const { proposal } = meals(paper, {
    day: '2026-02-09',
    onPlan: true,
    currentKcal: 711,
    trend,
    weightKg: 22.7,
  });
  return {
    ...context(paper),
    day: '2026-02-09',
    trend,
    corridor: lossCorridor({ startDay: '2025-12-01', initialKg: 24.2, targetKg: 22 }),
    targetKg: 22,
    holdKg: null,
    projection: projectTarget(trend, 22),
    then: findings,
    now: {
      ...findings,
      day: '2026-02-09',
      weightKg: 22.7,
      bcs: 5,
      muscle: 'normal',
      lamenessTrot: sound,
      gaitNote: '',
    },
    running: {
      says: 'progress',
      reasons: [],
      walking: false,
      since: '2026-01-12',
      sessionsDone: 28,
      sessionsPlanned: 30,
      longestRunMinutes: 24,
    },
    food: { ...answered, proposal, previousKcal: 711, kcalPerDay: proposal.kcalPerDay },
    nextWeighDay: proposal.nextWeighInDay,
    note: 'Bramble moves with much more ease. Keep the first ten minutes slow, as you do now.',
    ...changes,
  };
}

/** A single weighing and nothing else. */
export function firstWeighing(paper: Paper): ProgressReportData {
  const trend = weightTrend(weighings.slice(0, 1));
  return progress(paper, {
    day: '2025-12-01',
    trend,
    projection: projectTarget(trend, 22),
    then: null,
    now: findings,
    running: null,
    food: null,
    nextWeighDay: '2025-12-15',
    note: '',
  });
}

/** No weighing at all. */
export const noWeighing = (paper: Paper): ProgressReportData => ({
  ...firstWeighing(paper),
  trend: weightTrend([]),
  corridor: [],
  targetKg: null,
  projection: null,
  nextWeighDay: null,
});

export const longNamesProgress = (paper: Paper): ProgressReportData => ({
  ...progress(paper),
  ...longNames(paper),
});

/** The vet comes first, and the runs stop. */
export function stopped(paper: Paper): ProgressReportData {
  return progress(paper, {
    running: {
      says: 'stop',
      reasons: [],
      walking: false,
      since: '2026-01-12',
      sessionsDone: 4,
      sessionsPlanned: 6,
      longestRunMinutes: null,
    },
    food: { ...answered, proposal: null, referred: true, previousKcal: 711, kcalPerDay: null },
    projection: null,
  });
}

/** A review that saw something after every run. */
export function manyReasons(paper: Paper): ProgressReportData {
  const base = progress(paper);
  const reasons = Array.from({ length: 24 }, (_, index): Reason => ({
    code: 'review-mild-stiffness',
    text: 'Mild stiffness, gone within 24 h.',
    params: { day: addDays('2025-12-01', index * 2) },
    evidence: 'B',
    mark: 'M',
    sources: ['sorenessRules'],
  }));
  return progress(paper, {
    running: base.running && { ...base.running, says: 'hold', reasons },
  });
}
