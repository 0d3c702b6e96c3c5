import type { MuscleCondition } from '../condition/bodyCondition.ts';
import type { IsoDay } from '../day.ts';
import type { Activity, NeuterStatus } from '../energy/maintenance.ts';
import type { Estimate, Figure, Reason } from '../figure.ts';
import type { FedFood } from '../food/ration.ts';
import type { GaitMeasurement } from '../gait/types.ts';
import type { SessionResult } from '../ramp/reviewTypes.ts';
import type { Ramp, StartLevel } from '../ramp/types.ts';
import type {
  Appetite,
  Disease,
  HeatIllness,
  Injury,
  LamenessClearance,
  Stool,
} from '../readiness/record.ts';
import type { LimbGrades, Screening, SurgeryState, WalkBase } from '../readiness/types.ts';
import type { RuleChanges } from '../rules/all.ts';
import type { RunAsItWas } from '../track/types.ts';
import type { WeekOfRunning } from '../running/plannedRunning.ts';
import type { CorridorPoint } from '../weight/corridor.ts';
import type { FoodGoal, FoodProposal } from '../weight/foodTypes.ts';
import type { OwnEnergy } from '../weight/ownEnergy.ts';
import type { TargetProjection } from '../weight/projection.ts';
import type { WeightTrend } from '../weight/trend.ts';
import type { WeightState } from '../weight/weightState.ts';
import type { Weighing, WeighingMethod } from '../weight/weighing.ts';

/** What the record says of the dog itself. */
export interface AssessedDog {
  readonly birthDay: IsoDay;
  readonly neuter: NeuterStatus;
  readonly neuteredAtMonths: number | null;
  readonly adultWeightKg: number | null;
  readonly shortNosed: boolean;
  readonly sighthound: boolean;
}

/** What the record says of one visit; null where nothing was measured. */
export interface AssessedVisit {
  readonly day: IsoDay;
  readonly weightKg: number | null;
  readonly weighingMethod: WeighingMethod;
  readonly scaleStepKg: number;
  readonly bcs: number | null;
  readonly muscle: MuscleCondition | null;
  readonly lamenessWalk: LimbGrades;
  readonly lamenessTrot: LimbGrades;
  /** Lameness that vets cleared the dog for work with; none, where left out. */
  readonly lamenessClearances?: readonly LamenessClearance[];
  readonly measurements?: readonly GaitMeasurement[];
  /** Whether signs, and surgery, injury, disease and the like, were asked for; they were, where left out. */
  readonly signsAsked?: boolean;
  readonly historyAsked?: boolean;
  readonly signs: readonly string[];
  readonly surgery: SurgeryState;
  /** What is known of the past; nothing, where left out. */
  readonly injuries?: readonly Injury[];
  readonly disease?: Disease;
  readonly heatIllness?: HeatIllness;
  readonly medicine?: string;
  /** Eating, drinking and digesting as told at the visit; null, or left out: not asked. */
  readonly appetite?: Appetite | null;
  readonly thirst?: Appetite | null;
  readonly stool?: Stool | null;
  readonly airwayDisease: boolean;
  /** Written clearance of the vet for a short nose or airway disease. */
  readonly airwayClearance: boolean;
  readonly radiographicClearance: boolean;
  /** The first day of normal appetite and energy after an illness since the last visit; null, or left out: none. */
  readonly wellSince?: IsoDay | null;
  /** The vet's written yes to runs beyond what core allows by itself; none, where left out. */
  readonly longRunClearance?: boolean;
  readonly conditioning: StartLevel;
  readonly walkBase: WalkBase;
  readonly activity: Activity;
  readonly consent: {
    readonly given: boolean;
    readonly vet: string;
    readonly day: IsoDay | null;
    readonly scope: string;
    readonly expiryDay: IsoDay | null;
  };
  readonly overrides: readonly { readonly code: string; readonly reason: string }[];
  readonly targetWeightKg: number | null;
  readonly foodGoal: FoodGoal;
  readonly mealsPerDay: number;
  readonly weightLossDiet: boolean;
  readonly diet: readonly FedFood[];
}

/** A food decision that stands: from its day on the dog is fed `kcalPerDay`. */
export interface AssessedDecision {
  readonly decidedOn: IsoDay;
  readonly kcalPerDay: number;
  /** The running the ration already holds, kcal/day; 0 where none was planned. */
  readonly known: { readonly runningKcalPerDay: number };
}

/** The plan in force: its weeks, and the climb of each outing in m. */
export interface AssessedPlan {
  readonly ramp: Pick<Ramp, 'weeks'> & Partial<Pick<Ramp, 'request'>>;
  readonly climbM: number | null;
}

export interface AssessInput {
  readonly dog: AssessedDog;
  /** Oldest first. */
  readonly visits: readonly AssessedVisit[];
  /** Weighings between visits, in any order; they count like those of the visits. */
  readonly weighings?: readonly Weighing[];
  /** Oldest first, without the one that is being decided. */
  readonly foodDecisions: readonly AssessedDecision[];
  readonly day: IsoDay;
  readonly plan?: AssessedPlan | null;
  /** Session results of the plan. */
  readonly sessions?: readonly (SessionResult & Partial<RunAsItWas>)[];
  /** The rules the practice changed. */
  readonly rules?: RuleChanges;
}

/** What a running plan asks of the food. */
export interface AssessedRunning {
  /** Metres climbed on each planned outing, and of how many recorded ones that is the mean; 0: as planned. */
  readonly climb: { readonly metres: number; readonly recorded: number };
  /** Week by week, in the order of the plan. */
  readonly weeks: readonly WeekOfRunning[];
  /** The week the assessed day falls in, or the first one ahead; null when the plan is over. */
  readonly current: WeekOfRunning | null;
}

/** The weight a dog is fed towards, and what the newest score says of it. */
export interface TargetInForce {
  readonly kg: number;
  /** Set by the practitioner, computed from the score the aim began with, or the weight itself. */
  readonly basis: 'chosen' | 'score' | 'weight';
  /** The day it was set. */
  readonly sinceDay: IsoDay;
  /** What a later score comes to, where that lies apart; it moves nothing by itself. */
  readonly proposed: { readonly kg: number; readonly bcs: number; readonly day: IsoDay } | null;
  /** Why the score behind the target no longer says much; null while it does. */
  readonly stale: Reason | null;
}

/** What core makes of a record on a day: one source for screen, handouts and lists. */
export interface Assessment {
  readonly day: IsoDay;
  readonly weightKg: number;
  readonly ageMonths: number;
  /** Fed for growth: its weight has to rise, whatever its aim. */
  readonly growing: boolean;
  readonly resting: Figure;
  readonly maintenance: Estimate;
  readonly ideal: Estimate | null;
  /** The target frozen when the aim began, and what the newest score says of it. */
  readonly target: TargetInForce;
  /** The weight of the target in force. */
  readonly targetWeightKg: number;
  /** What is wrong where the target set and the aim speak against each other; null where they do not. */
  readonly aimProblem: Reason | null;
  /** Over all weighings, for the chart. */
  readonly trend: WeightTrend;
  /** Since the present ration and aim began, at most half a year, for the decision. */
  readonly trendOnRation: WeightTrend;
  readonly projection: TargetProjection;
  /** Empty unless weight is to be lost. */
  readonly corridor: readonly CorridorPoint[];
  readonly own: OwnEnergy;
  /** Weight and need as the record shows them now, to look ahead from; null while the dog grows. */
  readonly body: WeightState | null;
  /** The latest weighing outside the corridor by more than its error; null inside or without one. */
  readonly offCorridor: Reason | null;
  /** A slow change of weight in a dog on no plan; null where the record shows none. */
  readonly drift: Reason | null;
  /** The cost of the planned running; null without a plan or a pace. */
  readonly running: AssessedRunning | null;
  /** What the dog eats now by the record, kcal/day; 0 when nothing is known. */
  readonly intakeKcal: number;
  readonly screening: Screening;
  readonly food: FoodProposal;
}
