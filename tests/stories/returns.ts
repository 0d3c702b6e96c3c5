import type { Story } from './story.ts';

const SORE = { leftFore: 0, rightFore: 0, leftHind: 1, rightHind: 0 };
const LAME = { leftFore: 0, rightFore: 0, leftHind: 2, rightHind: 0 };

/** A sound dog and its first plan. */
const BEGUN = {
  on: 0,
  visit: {},
  food: 'accepted',
  plan: { inDays: 2, goal: { continuousMinutes: 20 } },
} as const;

/** Histories in which something holds the dog back, or the record is put right. */
export const RETURNS: readonly Story[] = [
  {
    name: 'after surgery, cleared in writing',
    steps: [
      { on: 0, visit: { surgery: 'not cleared' }, food: 'accepted' },
      {
        on: 21,
        visit: { weightKg: 24, bcs: 5, surgery: 'cleared in writing', conditioning: 'post-injury' },
        plan: { inDays: 1, start: 'post-injury', goal: { continuousMinutes: 15 } },
      },
      { on: 42, visit: { weightKg: 24.2, bcs: 5 }, told: 'done', review: 'accepted' },
    ],
  },
  {
    name: 'after surgery, not cleared',
    steps: [
      { on: 0, visit: { surgery: 'not cleared' }, food: 'accepted' },
      { on: 14, visit: { weightKg: 24.1, bcs: 5 } },
    ],
  },
  {
    name: 'lame, seen by the vet, and back',
    steps: [
      BEGUN,
      { on: 28, visit: { weightKg: 24, bcs: 5, lamenessTrot: SORE }, told: 'done' },
      {
        on: 49,
        visit: { weightKg: 24, bcs: 5, trotLamenessAssessed: true },
        told: 'held',
        review: 'accepted',
      },
    ],
  },
  {
    name: 'lame at the walk, and the plan reviewed',
    steps: [
      BEGUN,
      {
        on: 28,
        visit: { weightKg: 24, bcs: 5, lamenessWalk: LAME, lamenessTrot: LAME },
        told: 'done',
        review: 'accepted',
      },
    ],
  },
  {
    name: 'a collapse is told at home',
    steps: [BEGUN, { on: 21, told: { all: 'done', last: { signs: ['collapse'] } } }],
  },
  {
    name: 'stopped for a cough, and returned with a new plan',
    steps: [
      BEGUN,
      {
        on: 28,
        visit: { weightKg: 24, bcs: 5, signs: ['cough'] },
        told: 'done',
        review: 'accepted',
      },
      {
        on: 70,
        visit: { weightKg: 24.4, bcs: 5, signs: [] },
        plan: { inDays: 2, goal: { continuousMinutes: 20 } },
      },
    ],
  },
  {
    name: 'two weeks of holiday',
    steps: [
      BEGUN,
      { on: 21, told: 'done' },
      { on: 36, visit: { weightKg: 24.3, bcs: 5 }, told: 'missed', review: 'accepted' },
    ],
  },
  {
    name: 'six weeks untold',
    steps: [BEGUN, { on: 14, told: 'done' }, { on: 56, passes: true }],
  },
  {
    name: 'untold up to the end of the plan and beyond',
    steps: [BEGUN, { on: 14, told: 'done' }, { on: 240, passes: true }],
  },
  {
    name: 'a plan edited by hand',
    steps: [
      BEGUN,
      {
        on: 3,
        edits: (day) => [{ kind: 'remove', day: day(-1) }],
        why: 'The last day falls into the holiday.',
      },
      { on: 9, told: 'done' },
    ],
  },
  {
    name: 'a visit put right afterwards',
    steps: [
      BEGUN,
      { on: 14, visit: { weightKg: 42, bcs: 5 }, told: 'done', review: 'accepted' },
      { on: 15, amended: { weightKg: 24.2 }, why: 'The figures were turned round.' },
    ],
  },
  {
    name: 'restored from a bundle',
    steps: [
      BEGUN,
      { on: 14, visit: { weightKg: 24.1, bcs: 5 }, told: 'done', review: 'accepted' },
      { on: 15, restored: 'from a bundle' },
    ],
  },
  {
    name: 'walks only: the walk base was not passed',
    steps: [
      { on: 0, visit: { walkBase: 'failed' }, food: 'accepted' },
      { on: 14, visit: { weightKg: 24.1, bcs: 5 }, food: 'accepted' },
    ],
  },
  {
    name: 'a young dog walks',
    dog: { birthDay: '2025-06-01', adultWeightKg: 26 },
    steps: [
      { on: 0, visit: { weightKg: 20, bcs: 5 }, food: 'accepted' },
      { on: 14, visit: { weightKg: 20.9, bcs: 5 } },
    ],
  },
  {
    name: 'a short nose without clearance, and a consent that ends',
    dog: { shortNosed: true },
    steps: [
      {
        on: 0,
        visit: {
          consent: {
            given: true,
            vet: 'Dr C. Vet',
            day: '2026-02-20',
            scope: 'Walking',
            expiryDay: '2026-04-10',
          },
        },
        food: 'accepted',
      },
      { on: 28, weighed: 24.1 },
    ],
  },
];
