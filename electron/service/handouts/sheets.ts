import {
  bowlsOf,
  firstDayOf,
  gaitChanges,
  isBeginning,
  isSetback,
  judgeMeasurements,
  programmeOf,
  rationByWeek,
  redFlagLabel,
  underWay,
  type Figure,
  type WeekRation,
} from '../../../core/index.ts';
import type {
  LetterHistory,
  PlanOnward,
  RunningProgress,
  VisitSheet,
} from '../../../templates/index.ts';
import type { Plan } from '../../contract/contract.ts';
import type { HandoutKind } from '../../contract/records.ts';
import { findingsAt, weighedBy, type Material } from './material.ts';
import { exercises, surgeryTold, told } from './told.ts';

// What each sheet is told. Nothing is computed here: the numbers come from the record and from core.
// An open proposal is printed nowhere: a ration is the one in force, a plan the one decided on.

type SheetOf<K extends HandoutKind> = Extract<VisitSheet, { kind: K }>;
type Builders = { readonly [K in HandoutKind]: (material: Material) => SheetOf<K>['data'] };

/** The plan in force, while it announces outings. */
function ramp({ state }: Material) {
  return underWay(state.programme)?.plan.ramp ?? null;
}

/** What has to be settled before the plan is in force; a stop is for the vet to lift. */
function waitsFor({ state: { programme } }: Material) {
  if (programme.kind === 'stopped') return 'vet';
  return programme.kind === 'waiting' ? programme.for : null;
}

/** Where the plan is printed from: the week of today, once weeks of it, or of a version before, are over. */
function onward({ state }: Material): PlanOnward | null {
  const going = underWay(state.programme);
  const week = going?.week ?? going?.plan.ramp.weeks[0];
  if (going === null || week === undefined || week.number <= 1) return null;
  const { done, shortened, planned, longestRunMinutes } = state.soFar!;
  return {
    fromWeek: week.number,
    outingsDone: done + shortened,
    outingsPlanned: planned,
    longestMinutes: longestRunMinutes,
    nextDay: going.next?.day ?? null,
  };
}

const signLabels = ({ latest }: Material): string[] =>
  latest.signs.map((id) => redFlagLabel(id) ?? id);

/** The decision taken at the visit the sheets speak of; null where it stayed as it was. */
const decidedNow = ({ state }: Material) => (state.decidedAtLastVisit ? state.ration : null);

/** The weeks ahead, where running is fed: not on a plan to lose, which it helps. */
function byWeek({ state, assessment }: Material): WeekRation[] {
  const { ration, aim } = state;
  if (ration === null || aim === 'lose' || state.programme.kind !== 'running') return [];
  const { kcalPerDay, known } = ration;
  return rationByWeek(
    { kcalPerDay, runningKcalPerDay: known.runningKcalPerDay },
    assessment.running,
  );
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

/** How the running goes: what was decided of it, and what was told. Null without a plan. */
function runningProgress({ state, latest, file }: Material): RunningProgress | null {
  const { programme, outings } = state;
  if (programme.kind === 'none' || outings === null) return null;
  const walking = programmeOf(programme.plan.ramp) === 'walking';
  const told = {
    walking,
    since: (file.visits.at(-2) ?? latest).day,
    sessionsDone: outings.done + outings.shortened,
    sessionsPlanned: outings.planned,
    longestRunMinutes: outings.longestRunMinutes,
  };
  const { plan } = programme;
  if (programme.kind === 'stopped') {
    return { ...told, says: 'stop', reasons: programme.reasons };
  }
  if (programme.kind === 'waiting') {
    return { ...told, says: programme.for === 'vet' ? 'stop' : 'walk', reasons: programme.reasons };
  }
  if (programme.kind === 'finished') return { ...told, says: 'finished', reasons: [] };
  const decided = plan.visitId === latest.id ? plan.review : null;
  const onward = walking ? 'walks' : 'progress';
  const reasons = decided?.reasons ?? [];
  return { ...told, says: decisionTold(decided, onward), reasons };
}

/** What was decided of the plan; a way back for time missed asks for no days off. */
function decisionTold(
  decided: Plan['review'],
  onward: 'walks' | 'progress',
): RunningProgress['says'] {
  if (decided?.decision === 'hold') return isBeginning(decided.reasons) ? 'begin' : 'hold';
  if (decided?.decision !== 'back') return onward;
  return isSetback(decided.reasons) ? 'back' : 'lower';
}

/** What the vet should know of the time before the visit. */
function letterHistory(material: Material): LetterHistory {
  const { file, latest } = material;
  const lame = (visit: (typeof file.visits)[number]): number =>
    Math.max(
      0,
      ...Object.values({ ...visit.lamenessWalk }).map((grade) => grade ?? 0),
      ...Object.values(visit.lamenessTrot).map((grade) => grade ?? 0),
    );
  return {
    surgery: surgeryTold(material),
    airwayClearance: latest.airwayClearance,
    earlierLameness: file.visits
      .filter((visit) => visit.id !== latest.id && lame(visit) > 0)
      .map((visit) => ({ day: visit.day, grade: lame(visit) })),
    afterRuns: file.sessions
      .filter(
        ({ nextDay, signs }) => (nextDay !== null && nextDay !== 'normal') || signs.length > 0,
      )
      .map(({ day, nextDay, signs }) => ({
        day,
        what: [...signs, ...(nextDay === null || nextDay === 'normal' ? [] : [nextDay])].join(', '),
      })),
    ownersWords: file.sessions
      .filter(({ note }) => note.trim() !== '')
      .map(({ day, note }) => ({ day, note: note.trim() })),
  };
}

const BUILDERS: Builders = {
  'running-plan': (material) => ({
    ...material.context,
    findings: findingsAt(material, material.latest),
    screening: material.state.screening,
    ramp: ramp(material),
    heat: material.heat,
    strength: exercises(material).length > 0,
    onward: onward(material),
  }),
  'feeding-sheet': (material) => {
    const { assessment, context, state } = material;
    const { ration, aim } = state;
    return {
      ...context,
      aim: assessment.growing ? 'grow' : aim,
      proposal: ration?.proposal ?? referralOnly(assessment.food),
      decidedOn: ration?.decidedOn ?? null,
      kcalPerDay: ration?.kcalPerDay ?? null,
      decisionNote: ration?.note ?? '',
      ration: ration?.ration ?? null,
      need: assessment.own.informative ? assessment.own : assessment.maintenance,
      targetWeightKg: aim === 'hold' ? null : state.targetKg,
      changeover: ration?.changeover ?? null,
      byWeek: byWeek(material),
      nextWeighDay: weighDay(material),
    };
  },
  'bowl-labels': ({ context, state: { ration } }) => ({
    ...context,
    bowls: ration?.ration == null ? [] : bowlsOf(ration.ration, ration.changeover),
    mealsPerDay: ration?.ration?.mealsPerDay ?? 0,
    since: ration?.changeover?.steps.at(-1)?.day ?? ration?.decidedOn ?? context.day,
  }),
  'progress-report': (material) => {
    const { assessment, context, file, latest, state } = material;
    const first = file.visits[0]!;
    const decision = decidedNow(material);
    const earlier = file.foodDecisions.findLast(({ visitId }) => visitId !== latest.id);
    return {
      ...context,
      trend: assessment.trend,
      corridor: assessment.corridor,
      targetKg: state.aim === 'hold' ? null : state.targetKg,
      holdKg: state.aim === 'hold' && !assessment.growing ? state.targetKg : null,
      projection: state.aim === 'hold' ? null : assessment.projection,
      then: first.id === latest.id ? null : findingsAt(material, first),
      now: findingsAt(material, latest),
      running: runningProgress(material),
      food: {
        proposal: decision?.proposal ?? null,
        referred: decision === null && assessment.food.referral !== null,
        asProposed: decision?.decision === 'accepted',
        note: decision?.note ?? '',
        previousKcal: earlier?.kcalPerDay ?? null,
        kcalPerDay: state.ration?.kcalPerDay ?? null,
        newFood: decision?.foodSwitch ?? null,
      },
      nextWeighDay: weighDay(material),
      note: '',
    };
  },
  'heat-card': ({ context, heat }) => ({ ...context, heat }),
  'kit-sheet': ({ context, file }) => ({
    ...context,
    pace: file.dog.withersCm === null ? null : gaitChanges({ heightM: file.dog.withersCm / 100 }),
  }),
  'strength-sheet': (material) => ({ ...material.context, exercises: exercises(material) }),
  'vet-letter': (material) => {
    const { assessment, context, latest, state } = material;
    const kcal = state.ration?.kcalPerDay ?? null;
    return {
      ...context,
      findings: findingsAt(material, latest),
      signs: signLabels(material),
      measurements: judged(material),
      screening: material.state.screening,
      told: told(material),
      history: letterHistory(material),
      trend: assessment.trend,
      ramp: ramp(material),
      feeding:
        kcal === null
          ? null
          : {
              aim: assessment.growing ? 'grow' : state.aim,
              kcalPerDay: kcal,
              targetWeightKg: state.aim === 'hold' ? null : state.targetKg,
            },
      questions: [],
    };
  },
  'assessment-record': (material) => {
    const { assessment, context, file, latest } = material;
    const decision = decidedNow(material);
    const plan = file.plans.find(({ current }) => current) ?? null;
    return {
      ...context,
      kind: latest.kind,
      ageMonths: assessment.ageMonths,
      findings: findingsAt(material, latest),
      signs: signLabels(material),
      weighingMethod: weighedBy(material),
      activity: latest.activity,
      conditioning: latest.conditioning,
      walkBase: latest.walkBase,
      told: told(material),
      surgery: surgeryTold(material),
      airwayDisease: latest.airwayDisease,
      airwayClearance: latest.airwayClearance,
      radiographicClearance: latest.radiographicClearance,
      diet: latest.diet,
      measurements: judged(material),
      screening: material.state.screening,
      figures: figures(material),
      foodDecision:
        decision === null ? null : { kcalPerDay: decision.kcalPerDay, verdict: decision.decision },
      plan:
        plan === null
          ? null
          : {
              version: plan.version,
              startDay: firstDayOf(plan),
              ramp: plan.ramp,
              waitsFor: waitsFor(material),
            },
      notes: latest.notes,
      amendments: material.amendments,
    };
  },
};

/** Of a proposal that nobody decided on, only that the vet comes first is printed. */
const referralOnly = (proposal: Material['assessment']['food']) => ({
  ...proposal,
  kcalPerDay: null,
  ration: null,
  figure: null,
});

const weighDay = ({ state }: Material): string | null =>
  state.due.find(({ what }) => what === 'weigh')?.day ?? null;

/** A ration of one's own has no figure of the program's beside it: two amounts would stand there. */
function figures(material: Material): Figure[] {
  const decision = decidedNow(material);
  const { resting, maintenance, ideal, trendOnRation, own } = material.assessment;
  return [
    resting,
    maintenance.figure,
    ideal?.figure ?? null,
    trendOnRation.figure,
    own.figure,
    decision?.decision === 'accepted' ? decision.proposal.figure : null,
  ].filter((entry) => entry !== null);
}

/** One sheet with its data. */
export function sheetFor(kind: HandoutKind, material: Material): VisitSheet {
  return { kind, data: BUILDERS[kind](material) } as VisitSheet;
}
