import { KCAL_PER_KG_CHANGE } from '../../core/nutrition.ts';
import { random } from '../calibration/random.ts';

/** What a simulated world does to its dogs; sizes are ours (D). Shares unless a unit is named. */
export interface World {
  readonly name: string;
  /** Energy eaten beyond what the owner tells. */
  readonly unreported: readonly [number, number];
  /** How far the need falls on less food. */
  readonly adaptation: readonly [number, number];
  /** Error of one weighing. */
  readonly scale: number;
  /** Share of visits that come late, by 1–4 weeks. */
  readonly late: number;
}

export const WORLDS: readonly World[] = [
  { name: 'honest', unreported: [0, 0], adaptation: [0, 0], scale: 0.01, late: 0.15 },
  { name: 'easy', unreported: [0, 0.1], adaptation: [0.025, 0.1], scale: 0.01, late: 0.15 },
  { name: 'hard', unreported: [0, 0.25], adaptation: [0.05, 0.2], scale: 0.01, late: 0.15 },
  { name: 'adaptive need', unreported: [0, 0], adaptation: [0.1, 0.25], scale: 0.01, late: 0.15 },
  {
    name: 'noisy scale, late visits',
    unreported: [0, 0.1],
    adaptation: [0.025, 0.1],
    scale: 0.02,
    late: 0.4,
  },
];

/** Days over which gut fill and need follow the food. */
const GUT_DAYS = 5;
const ADAPT_DAYS = 28;
/** Gut fill, share of body weight at the first food. */
const GUT = 0.02;

/** A dog that lives from day to day; its owner feeds by the log. */
export class FoodDog {
  readonly startKg: number;
  readonly targetKg: number;
  readonly bcs: number;
  readonly toldKcal: number;
  tissueKg: number;
  private gut = 1;
  private adapted = 0;
  private readonly need0: number;
  private readonly unreported: number;
  private readonly adaptation: number;
  private readonly draw;
  private readonly world: World;

  constructor(world: World, seed: number) {
    const draw = random(seed * 7919 + 13);
    draw.uniform(0, 1);
    this.world = world;
    this.draw = draw;
    this.bcs = draw.pick([6, 7, 7, 8, 8, 9]);
    this.targetKg = Math.round(10 * Math.exp(draw.uniform(Math.log(6), Math.log(40)))) / 10;
    this.startKg = this.targetKg * (1 + 0.1 * (this.bcs - 5));
    this.tissueKg = this.startKg;
    this.unreported = draw.uniform(...world.unreported);
    this.adaptation = draw.uniform(...world.adaptation);
    // Need of the heavy dog: German 2015 (S) puts it far below the formula at present weight.
    this.need0 = 95 * Math.exp(0.25 * draw.normal()) * this.targetKg ** 0.75 * 1.05;
    this.toldKcal = (this.need0 / (1 + this.unreported)) * draw.uniform(0.97, 1.08);
  }

  /** The need today, kcal. */
  private need(): number {
    return this.need0 * (this.tissueKg / this.startKg) ** 0.75 * (1 - this.adapted);
  }

  live(toldKcal: number): void {
    const eaten = toldKcal * (1 + this.unreported);
    const shortfall = Math.min(1, Math.max(0, 1 - eaten / this.need0) / 0.25);
    this.adapted += (this.adaptation * shortfall - this.adapted) / ADAPT_DAYS;
    this.gut += (eaten / this.need0 - this.gut) / GUT_DAYS;
    this.tissueKg += (eaten - this.need()) / KCAL_PER_KG_CHANGE;
  }

  get kg(): number {
    return this.tissueKg + GUT * this.startKg * (this.gut - 1);
  }

  weigh(): number {
    return Math.round(10 * this.kg * (1 + this.world.scale * this.draw.normal())) / 10;
  }

  /** Days a visit comes late. */
  lateBy(): number {
    return this.draw.uniform(0, 1) < this.world.late ? Math.round(this.draw.uniform(7, 28)) : 0;
  }
}
