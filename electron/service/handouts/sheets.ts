import {
  gaitChanges,
  judgeMeasurements,
  rationByWeek,
  redFlagLabel,
  reviewRamp,
  type Figure,
  type WeekRation,
} from '../../../core/index.ts';
import type { VisitSheet } from '../../../templates/index.ts';
import { reviewInput } from '../../contract/reviewInput.ts';
import type { HandoutKind } from '../../contract/records.ts';
import { findingsAt, type Material } from './material.ts';

// What each sheet is told. Nothing is computed here: the numbers come from the record and from core.

type SheetOf<K extends HandoutKind> = Extract<VisitSheet, { kind: K }>;
type Builders = { readonly [K in HandoutKind]: (material: Material) => SheetOf<K>['data'] };

/** The ramp, while the dog may run. */
function ramp({ assessment, plan }: Material) {
  return assessment.screening.outcome === 'ready to start' ? (plan?.ramp ?? null) : null;
}

const signLabels = ({ latest }: Material): string[] =>
  latest.signs.map((id) => redFlagLabel(id) ?? id);

const kcalPerDay = ({ decision, assessment }: Material): number | null =>
  decision?.kcalPerDay ?? assessment.food.kcalPerDay;

/** The weeks ahead, where running is fed: not on a plan to lose, which it helps. */
function byWeek(material: Material): WeekRation[] {
  const { assessment, decision, latest } = material;
  const kcal = kcalPerDay(material);
  if (kcal === null || latest.foodGoal === 'lose') return [];
  const held = decision?.known.runningKcalPerDay ?? assessment.running?.current?.kcalPerDay ?? 0;
  return rationByWeek({ kcalPerDay: kcal, runningKcalPerDay: held }, assessment.running);
}

/** The latest visit's measurements, each against the last one taken the same way. */
function judged({ file, latest, rules }: Material) {
  const earlier = file.visits.filter(({ id }) => id !== latest.id).toReversed();
  return judgeMeasurements(
    latest.measurements,
    earlier.flatMap(({ measurements }) => measurements),
    rules,
  );
}

/** How the running goes by the record of today; null without a plan or before anything is told. */
function runningProgress({ file, plan, context, rules }: Material) {
  if (plan === null || file.sessions.length === 0) return null;
  const told = reviewInput({
    plan,
    sessions: file.sessions,
    rules: [],
    day: context.day,
    clearedByVetOn: null,
    visit: null,
    screening: null,
  });
  const { decision, reasons } = reviewRamp({ ...told, rules });
  // The sheet counts from the visit before this one; a first visit counts from the plan's start.
  const lastVisit = file.visits.at(-2)?.day ?? '';
  const planned = plan.ramp.weeks
    .flatMap(({ sessions }) => sessions)
    .filter(({ day }) => day >= lastVisit && day < context.day);
  const done = new Set(
    file.sessions.filter(({ outcome }) => outcome !== 'missed').map(({ day }) => day),
  );
  const run = planned.filter(({ day }) => done.has(day));
  return {
    decision,
    reasons,
    sessionsDone: run.length,
    sessionsPlanned: planned.length,
    longestRunMinutes: run.length === 0 ? null : Math.max(...run.map(({ runMin }) => runMin)),
  };
}

const BUILDERS: Builders = {
  'running-plan': (material) => ({
    ...material.context,
    findings: findingsAt(material, material.latest),
    screening: material.assessment.screening,
    ramp: ramp(material),
    heat: material.heat,
  }),
  'feeding-sheet': (material) => {
    const { assessment, context, decision, latest } = material;
    const proposal = decision?.proposal ?? assessment.food;
    return {
      ...context,
      aim: latest.foodGoal,
      proposal,
      kcalPerDay: kcalPerDay(material),
      decisionNote: decision?.note ?? '',
      ration: decision === null ? proposal.ration : decision.ration,
      need: assessment.own.informative ? assessment.own : assessment.maintenance,
      targetWeightKg: latest.foodGoal === 'hold' ? null : assessment.targetWeightKg,
      changeover: decision?.changeover ?? null,
      byWeek: byWeek(material),
    };
  },
  'progress-report': (material) => {
    const { assessment, context, decision, file, latest } = material;
    const first = file.visits[0]!;
    const earlier = file.foodDecisions.findLast(({ visitId }) => visitId !== latest.id);
    const proposal = decision?.proposal ?? assessment.food;
    return {
      ...context,
      trend: assessment.trend,
      corridor: assessment.corridor,
      targetKg: latest.foodGoal === 'hold' ? null : assessment.targetWeightKg,
      projection: assessment.projection,
      then: first.id === latest.id ? null : findingsAt(material, first),
      now: findingsAt(material, latest),
      running: runningProgress(material),
      food: {
        proposal,
        previousKcal: earlier?.kcalPerDay ?? null,
        kcalPerDay: kcalPerDay(material),
      },
      nextWeighDay: proposal.nextWeighInDay,
      note: '',
    };
  },
  'heat-card': ({ context, heat }) => ({ ...context, heat }),
  'kit-sheet': ({ context, file }) => ({
    ...context,
    pace: file.dog.withersCm === null ? null : gaitChanges({ heightM: file.dog.withersCm / 100 }),
  }),
  'vet-letter': (material) => {
    const { assessment, context, latest } = material;
    const kcal = kcalPerDay(material);
    return {
      ...context,
      findings: findingsAt(material, latest),
      signs: signLabels(material),
      measurements: judged(material),
      screening: assessment.screening,
      trend: assessment.trend,
      ramp: ramp(material),
      feeding:
        kcal === null
          ? null
          : {
              aim: latest.foodGoal,
              kcalPerDay: kcal,
              targetWeightKg: latest.foodGoal === 'hold' ? null : assessment.targetWeightKg,
            },
      questions: [],
    };
  },
  'assessment-record': (material) => {
    const { assessment, context, decision, latest, plan } = material;
    return {
      ...context,
      kind: latest.kind,
      ageMonths: assessment.ageMonths,
      findings: findingsAt(material, latest),
      signs: signLabels(material),
      weighingMethod: latest.weighingMethod,
      activity: latest.activity,
      conditioning: latest.conditioning,
      walkBase: latest.walkBase,
      surgery: latest.surgery,
      airwayDisease: latest.airwayDisease,
      airwayClearance: latest.airwayClearance,
      trotLamenessAssessed: Object.values(latest.lamenessTrot).some((grade) => (grade ?? 0) > 0)
        ? latest.trotLamenessAssessed
        : null,
      radiographicClearance: latest.radiographicClearance,
      diet: latest.diet,
      measurements: judged(material),
      screening: assessment.screening,
      figures: figures(material),
      foodDecision:
        decision === null ? null : { kcalPerDay: decision.kcalPerDay, verdict: decision.decision },
      plan:
        plan === null
          ? null
          : { version: plan.version, startDay: plan.request.startDay, ramp: plan.ramp },
      notes: latest.notes,
      amendments: material.amendments,
    };
  },
};

function figures({ assessment }: Material): Figure[] {
  const { resting, maintenance, ideal, trendOnRation, own, food } = assessment;
  return [
    resting,
    maintenance.figure,
    ideal?.figure ?? null,
    trendOnRation.figure,
    own.figure,
    food.figure,
  ].filter((entry) => entry !== null);
}

/** One sheet with its data. */
export function sheetFor(kind: HandoutKind, material: Material): VisitSheet {
  return { kind, data: BUILDERS[kind](material) } as VisitSheet;
}
