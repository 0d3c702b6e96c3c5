import { food } from './play.ts';
import type { Story } from './story.ts';
import { RETURNS } from './returns.ts';

const LAME = { leftFore: 0, rightFore: 0, leftHind: 2, rightHind: 0 };
const HEAVY = { weightKg: 30, bcs: 7, foodGoal: 'lose', targetWeightKg: 25 } as const;

/** Invented dogs over weeks and months. All are called Rusk; the story's name tells them apart. */
const TOLD: readonly Story[] = [
  {
    name: 'a first-timer begins',
    steps: [
      {
        on: 0,
        visit: {},
        food: 'accepted',
        plan: { inDays: 2, goal: { continuousMinutes: 20 } },
      },
    ],
  },
  {
    name: 'a heavy dog loses: food and plan accepted at one follow-up',
    steps: [
      {
        on: 0,
        visit: HEAVY,
        food: 'accepted',
        plan: { inDays: 2, goal: { continuousMinutes: 20 } },
      },
      { on: 14, visit: { weightKg: 29.9, bcs: 7 }, told: 'done', review: 'accepted' },
      {
        on: 35,
        visit: { weightKg: 29.8, bcs: 7 },
        told: 'done',
        food: 'accepted',
        review: 'accepted',
      },
    ],
  },
  {
    name: 'an old dog walks first',
    steps: [
      {
        on: 0,
        visit: { walkBase: 'failed', conditioning: 'unconditioned' },
        food: 'accepted',
        plan: { inDays: 1, programme: 'walking', walkMinutesNow: 15 },
      },
      { on: 9, visit: { weightKg: 24, bcs: 5 }, told: 'done', review: 'accepted' },
    ],
  },
  {
    name: 'walked up to the walk base, and runs',
    steps: [
      {
        on: 0,
        visit: { walkBase: 'failed', conditioning: 'unconditioned' },
        food: 'accepted',
        plan: { inDays: 1, programme: 'walking', walkMinutesNow: 20 },
      },
      {
        on: 28,
        visit: { weightKg: 24, bcs: 5, walkBase: 'passed' },
        told: 'done',
        plan: { inDays: 1, goal: { continuousMinutes: 20 } },
      },
      { on: 38, told: 'done' },
    ],
  },
  {
    name: 'no loss, and the food left as it was beside another proposal',
    steps: [
      { on: 0, visit: HEAVY, food: { kcalPerDay: 900, note: 'The owner starts gently.' } },
      { on: 14, visit: { weightKg: 30, bcs: 7 } },
      { on: 28, weighed: 30.1 },
      { on: 42, visit: { weightKg: 30.1, bcs: 7 } },
    ],
  },
  {
    name: 'lame after six weeks',
    steps: [
      {
        on: 0,
        visit: {},
        food: 'accepted',
        plan: { inDays: 2, goal: { continuousMinutes: 20 } },
      },
      { on: 42, visit: { weightKg: 24, bcs: 5, lamenessTrot: LAME }, told: 'done' },
      { on: 52, passes: true },
    ],
  },
  {
    name: 'heavy at condition 8, nothing decided',
    steps: [
      {
        on: 0,
        visit: { weightKg: 36, bcs: 8, foodGoal: 'lose', targetWeightKg: 27 },
      },
    ],
  },
  {
    name: 'a new food in a practice of kilojoules and pounds',
    practice: { energyUnit: 'kJ', weightUnit: 'lb', dayFormat: 'MM/DD/YYYY' },
    steps: [
      { on: 0, visit: HEAVY, food: 'accepted' },
      {
        on: 28,
        visit: { weightKg: 29.2, bcs: 7 },
        food: { newFood: { replaces: 'Dry food', name: 'Light food', kcalPer100g: 310, days: 7 } },
      },
      { on: 56, visit: { weightKg: 28.4, bcs: 6, diet: [food('Light food', 310, 250)] } },
    ],
  },
  {
    name: 'a first-timer to a small goal and to the end of the plan',
    steps: [
      {
        on: 0,
        visit: { conditioning: 'conditioned' },
        food: 'accepted',
        plan: { inDays: 1, start: 'conditioned', goal: { continuousMinutes: 10 } },
      },
      { on: 28, visit: { weightKg: 24.1, bcs: 5 }, told: 'done', review: 'accepted' },
      { on: 84, told: 'done' },
      { on: 160, told: 'done' },
    ],
  },
  {
    name: 'from obese to the target, then held',
    steps: [
      {
        on: 0,
        visit: { weightKg: 26, bcs: 6, foodGoal: 'lose', targetWeightKg: 24.5 },
        food: 'accepted',
      },
      { on: 28, visit: { weightKg: 25.2, bcs: 6 }, food: 'accepted' },
      { on: 56, visit: { weightKg: 24.5, bcs: 5, foodGoal: 'hold' }, food: 'accepted' },
      { on: 84, weighed: 24.6 },
    ],
  },
  {
    name: 'the condition changes, the target stays as it was set',
    steps: [
      { on: 0, visit: HEAVY, food: 'accepted' },
      { on: 28, visit: { weightKg: 29.3, bcs: 8 }, food: 'accepted' },
      { on: 56, visit: { weightKg: 28.6, bcs: 6 } },
    ],
  },
  {
    name: 'too thin, and gains',
    steps: [
      { on: 0, visit: { weightKg: 21, bcs: 3, foodGoal: 'gain', targetWeightKg: 23 } },
      { on: 21, visit: { weightKg: 21.3, bcs: 3 }, food: 'accepted' },
    ],
  },
  {
    name: 'two dogs of one owner, in pounds',
    practice: { weightUnit: 'lb' },
    secondDog: { weightKg: 33, bcs: 7, foodGoal: 'lose', targetWeightKg: 28, walkBase: 'failed' },
    steps: [
      {
        on: 0,
        visit: {},
        food: 'accepted',
        plan: { inDays: 3, goal: { continuousMinutes: 15 } },
      },
      { on: 21, weighed: 24.2 },
    ],
  },
  {
    name: 'the food declined, and a shortened run',
    steps: [
      {
        on: 0,
        visit: {},
        food: 'declined',
        plan: { inDays: 1, goal: { continuousMinutes: 20 } },
      },
      {
        on: 15,
        visit: { weightKg: 24, bcs: 5 },
        told: { all: 'done', last: { outcome: 'shortened', runMinutes: 2 } },
        review: 'accepted',
      },
    ],
  },
  {
    name: 'an event is named',
    steps: [
      {
        on: 0,
        visit: { conditioning: 'conditioned' },
        food: 'accepted',
        plan: {
          inDays: 2,
          start: 'conditioned',
          goal: { continuousMinutes: 20 },
          eventDay: '2026-09-27',
        },
      },
      { on: 17, told: 'done' },
    ],
  },
  ...RETURNS,
];

/** Whoever opens a record may do so days after its last visit: by turns, as the seed of the run says. */
const DAYS_ON = [0, 9, 45];
const daysOn = DAYS_ON[Number(process.env['LAWS_SEED'] ?? 0) % DAYS_ON.length]!;

export const STORIES: readonly Story[] = TOLD.map((story) => ({
  ...story,
  steps: [...story.steps, { on: story.steps.at(-1)!.on + daysOn, passes: true }],
}));
