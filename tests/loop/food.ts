import { assess, addDays, restingEnergy, type AssessedDecision } from '../../core/index.ts';
import type { AssessedVisit } from '../../core/assess/types.ts';
import { grownDog, visit } from '../core/assess/visits.ts';
import { FoodDog, type World } from './foodDog.ts';

const START = '2026-01-05';
const YEAR_DAYS = 364;
const REACHED = 1.02;

/** What a policy says at a visit: the ration from now on, the days to the next visit, what it said. */
interface Said {
  readonly kcal: number;
  readonly nextDays: number;
  readonly verdict: string;
}
export type Policy = (dog: FoodDog) => (day: number, kg: number) => Said;

/** The whole of `assess`, its proposals taken as they stand. */
export const core: Policy = (dog) => {
  const visits: AssessedVisit[] = [];
  const decisions: AssessedDecision[] = [];
  let fed = dog.toldKcal;
  return (day, kg) => {
    const on = addDays(START, day);
    const facts = { foodGoal: 'lose', targetWeightKg: dog.targetKg, kcal: fed } as const;
    visits.push(visit(on, kg, { ...facts, bcs: day === 0 ? dog.bcs : null }));
    const known = { ...grownDog, birthDay: '2021-05-01', adultWeightKg: dog.targetKg };
    const { food } = assess({ dog: known, visits, foodDecisions: decisions, day: on })!;
    if (food.kcalPerDay !== null) {
      fed = food.kcalPerDay;
      decisions.push({ decidedOn: on, kcalPerDay: fed, known: { runningKcalPerDay: 0 } });
    }
    const nextDays = food.nextWeighInDay > addDays(on, 14) ? 28 : 14;
    return { kcal: fed, nextDays, verdict: food.verdict };
  };
};

/** "10 % less while the loss is under 0.5 % a week", mirrored at 2 % and once at the target. */
export const ruleOfThumb: Policy = (dog) => {
  const floor = 0.8 * restingEnergy(dog.targetKg);
  let before: { day: number; kg: number } | null = null;
  let fed = dog.toldKcal;
  let arrived = false;
  return (day, kg) => {
    const rate = before === null ? null : ((kg / before.kg - 1) * 700) / (day - before.day);
    before = { day, kg };
    arrived ||= kg <= dog.targetKg;
    if (rate === null) fed = restingEnergy(dog.targetKg);
    else if (arrived) fed *= rate < -0.5 ? 1.1 : rate > 0.5 ? 0.9 : 1;
    else fed *= rate > -0.5 ? 0.9 : rate < -2 ? 1.1 : 1;
    fed = Math.max(floor, fed);
    return { kcal: fed, nextDays: 14, verdict: 'change' };
  };
};

export const leaveAlone: Policy = (dog) => () => ({
  kcal: dog.toldKcal,
  nextDays: 28,
  verdict: 'keep',
});

interface Life {
  readonly reached: boolean;
  readonly reachedHalf: boolean;
  readonly weeks: number;
  readonly outside: number;
  readonly deepest: number;
  readonly reversals: number;
  readonly regained: boolean;
  readonly underFloor: boolean;
  readonly referrals: number;
  readonly waits: number;
  readonly visits: number;
}

/** A dog's year of follow-ups, and after it a second one for what it regains. */
function live(world: World, seed: number, policy: Policy): Life {
  const dog = new FoodDog(world, seed);
  const decide = policy(dog);
  let [kcal, next, last, way, reversals, referrals, waits, visits] = [0, 0, 0, 0, 0, 0, 0, 0];
  let [outside, weeks, deepest, weekKg, underFloor] = [0, 0, 0, dog.kg, false];
  let reachedOn = Infinity;
  let regained = false;
  const floor = 0.8 * restingEnergy(dog.targetKg);
  for (let day = 0; day < 2 * YEAR_DAYS; day += 1) {
    const first = day < YEAR_DAYS;
    if (day === next) {
      const said = decide(day, dog.weigh());
      const sign = kcal === 0 ? 0 : Math.sign(Math.round(said.kcal - kcal));
      if (first) {
        if (sign !== 0 && way !== 0 && sign !== way) reversals += 1;
        referrals += said.verdict === 'refer' ? 1 : 0;
        waits += said.verdict === 'wait' ? 1 : 0;
        visits += 1;
      }
      if (sign !== 0) way = sign;
      kcal = said.kcal;
      last = day;
      next = last + said.nextDays + dog.lateBy();
      underFloor ||= kcal < floor - 1;
    }
    dog.live(kcal);
    if (dog.kg <= dog.targetKg * REACHED && reachedOn === Infinity) reachedOn = day;
    if (reachedOn < day && day - reachedOn <= YEAR_DAYS) {
      regained ||= dog.kg > dog.targetKg * 1.05;
    }
    if (first) deepest = Math.max(deepest, 100 * (1 - dog.kg / dog.targetKg));
    if (first && day % 7 === 6) {
      if (reachedOn === Infinity) {
        const loss = (100 * (weekKg - dog.kg)) / dog.startKg;
        weeks += 1;
        outside += loss < 0.5 || loss > 2 ? 1 : 0;
      }
      weekKg = dog.kg;
    }
  }
  const reached = reachedOn < YEAR_DAYS;
  const reachedHalf = reachedOn < YEAR_DAYS / 2;
  return {
    ...{ reached, reachedHalf, weeks, outside, deepest, reversals, regained, underFloor },
    ...{ referrals, waits, visits },
  };
}

export interface FoodRow {
  readonly reached: number;
  readonly outside: number;
  readonly p90Under: number;
  readonly tenUnder: number;
  readonly reversals: number;
  readonly reachedHalf: number;
  readonly regained: number;
  readonly underFloor: number;
  readonly referrals: number;
  readonly waits: number;
}

/** Plays `dogs` dogs of a world; the same seed plays the same dogs for each policy. */
export function play(world: World, policy: Policy, dogs: number, seed: number): FoodRow {
  const lives = Array.from({ length: dogs }, (_, index) => live(world, seed + index, policy));
  const sum = (of: (life: Life) => number) => lives.reduce((total, life) => total + of(life), 0);
  const share = (of: (life: Life) => boolean) => (100 * lives.filter(of).length) / dogs;
  const depths = lives.map(({ deepest }) => deepest).sort((a, b) => a - b);
  const arrived = Math.max(1, lives.filter(({ reached }) => reached).length);
  return {
    reached: share(({ reached }) => reached),
    outside: (100 * sum(({ outside }) => outside)) / sum(({ weeks }) => weeks),
    p90Under: depths[Math.floor(0.9 * (dogs - 1))]!,
    tenUnder: share(({ deepest }) => deepest > 10),
    reversals: sum(({ reversals }) => reversals) / dogs,
    reachedHalf: share(({ reachedHalf }) => reachedHalf),
    regained: (100 * lives.filter((life) => life.reached && life.regained).length) / arrived,
    underFloor: share(({ underFloor }) => underFloor),
    referrals: sum(({ referrals }) => referrals) / dogs,
    waits: (100 * sum(({ waits }) => waits)) / sum(({ visits }) => visits),
  };
}
