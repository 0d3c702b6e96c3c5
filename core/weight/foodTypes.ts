import type { MuscleCondition } from '../condition/bodyCondition.ts';
import type { IsoDay } from '../day.ts';
import type { EnergyReference } from '../energy/maintenance.ts';
import type { Estimate, Figure, Reason } from '../figure.ts';
import type { FedFood, Ration } from '../food/ration.ts';
import type { OwnEnergy } from './ownEnergy.ts';
import type { WeightTrend } from './trend.ts';
import type { WeightState } from './weightState.ts';

export const FOOD_GOALS = ['lose', 'hold', 'gain'] as const;
export type FoodGoal = (typeof FOOD_GOALS)[number];

export interface AdjustFoodInput {
  readonly day: IsoDay;
  readonly goal: FoodGoal;
  readonly weightKg: number;
  readonly targetWeightKg: number;
  /** Body condition 1–9, where scored. */
  readonly bcs?: number;
  /** Muscle condition, where scored. */
  readonly muscle?: MuscleCondition;
  /** Weight at the start of the present feeding plan; `weightKg` if absent. */
  readonly initialWeightKg?: number;
  /** Weighings before the present one, kg: they tell a target that is reached; `initialWeightKg` if absent. */
  readonly earlierKg?: readonly number[];
  /** True once a food decision stands and the record since then can speak. */
  readonly onPlan?: boolean;
  /** What the dog eats now, treats included, kcal/day. */
  readonly currentKcal?: number;
  /** Weighings since the present ration began. */
  readonly trend?: WeightTrend;
  /** The formula's estimate of maintenance energy; by body weight alone if absent. */
  readonly maintenance?: Estimate;
  /** The dog's own estimate, where the record gives one. */
  readonly own?: OwnEnergy;
  /** Weight and need as the record shows them now; with it the ration is steered by what is predicted. */
  readonly state?: WeightState;
  /** Days since the ration in force began; a change waits for two weeks of it. */
  readonly daysOnRation?: number;
  /** Days without a weighing after which the plan began anew. */
  readonly afterGapDays?: number;
  /** Weight gone in four weeks, % of the highest in them. */
  readonly lostPercentIn4Weeks?: number;
  /** Neutered in the last five months. */
  readonly neuteredLately?: boolean;
  /** Then growth energy alone is proposed: needs `adultWeightKg`, or a growth estimate above. */
  readonly growing?: boolean;
  /** Expected adult weight of a growing dog, kg. */
  readonly adultWeightKg?: number;
  /** The present ration comes from a plan to lose that has ended. */
  readonly rationFromLossPlan?: boolean;
  readonly pregnantOrNursing?: boolean;
  /** Ill: no ration without the vet. */
  readonly unwell?: boolean;
  /** Eats less or drinks more than usual, or has loose stool: no ration without the vet. */
  readonly unlikeItself?: boolean;
  readonly onMedicine?: boolean;
  /** The food is a complete diet made for weight loss. */
  readonly weightLossDiet?: boolean;
  readonly foods?: readonly FedFood[];
  readonly mealsPerDay?: number;
  /** Energy of the planned running beyond the counted activity, kcal/day on average. */
  readonly runningKcalPerDay?: number;
  /** The part of it the present ration already holds; all of it if absent. */
  readonly runningInRationKcalPerDay?: number;
}

/** An input whose maintenance energy is settled. */
export type FoodCase = AdjustFoodInput & { readonly maintenance: Estimate };

export type FoodVerdict =
  /** First ration of a plan. */
  | 'start'
  /** The record asks for another ration. */
  | 'change'
  /** The record is where it should be. */
  | 'keep'
  /** The record cannot tell yet. */
  | 'wait'
  /** No ration is proposed: the vet first. */
  | 'refer';

/** What a ration is expected to do over the next weeks, % of the first weight a week. */
export interface Forecast {
  readonly kcalPerDay: number;
  readonly percentPerWeek: number;
  readonly low: number;
  readonly high: number;
}

export interface FoodProposal {
  readonly verdict: FoodVerdict;
  /** Proposed energy, treats included, kcal/day; null with `refer`. */
  readonly kcalPerDay: number | null;
  /** What to put in the bowl; null without foods, or with `refer`. */
  readonly ration: Ration | null;
  readonly treatAllowanceKcal: number | null;
  readonly reasons: readonly Reason[];
  readonly warnings: readonly Reason[];
  /** Why the vet comes first, in a sentence; null otherwise. */
  readonly referral: string | null;
  /** What the program waits for, in a sentence; null otherwise. */
  readonly waitingFor: string | null;
  readonly nextWeighInDay: IsoDay;
  /** Published values to set beside the proposal, e.g. what dogs on a loss plan needed in fact. */
  readonly references: readonly EnergyReference[];
  /** The proposed energy as a figure; null with `refer`. */
  readonly figure: Figure | null;
  /** The rate expected on the proposed ration; left out where the record cannot tell, and in what was kept before. */
  readonly forecast?: Forecast;
}

/** A corridor of rates, % of the initial weight per week, negative when losing. */
export interface RateCorridor {
  readonly min: number;
  readonly aim: number;
  readonly max: number;
}
