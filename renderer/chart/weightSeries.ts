import type { WeighedPoint, WeightSeries } from '../../core/index.ts';

export interface ChartPoint extends WeighedPoint {
  /** Weighed between visits. */
  readonly between?: boolean;
}

/** Something that happened to the weight's course: the food changed, a stage of the plan began. */
export interface ChartMark {
  readonly day: string;
  readonly words: string;
}

/** The weight's series as the screen has them. */
export interface ChartWeight extends WeightSeries {
  readonly points: readonly ChartPoint[];
  readonly marks: readonly ChartMark[];
}
