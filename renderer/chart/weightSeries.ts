/** One weighing with the scale's own error, in kg. */
export interface ChartPoint {
  readonly day: string;
  readonly kg: number;
  readonly errorKg: number;
  /** Why it is looked at twice (another scale, an outlier); empty when it is not. */
  readonly flag: string;
  /** Weighed between visits. */
  readonly between?: boolean;
}

/** A stretch between two lines over time, in kg. */
export interface ChartBand {
  readonly day: string;
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** Something that happened to the weight's course: the food changed, a stage of the plan began. */
export interface ChartMark {
  readonly day: string;
  readonly words: string;
}
