import fc from 'fast-check';
import { addDays } from '../../../core/day.ts';
import type { Provenance } from '../../../core/figure.ts';
import {
  buildRamp,
  checkRamp,
  defaultRules,
  editRamp,
  footfallTiming,
  gaitChanges,
  heatBand,
  judgeMeasurements,
  likelyGait,
  reviewRamp,
  screenForRunning,
  standingShares,
  type GaitMeasurement,
  type Ramp,
  type RampEdit,
  type RuleChanges,
  type RuleGroup,
  RAMP_RULES,
  type NextDayResponse,
  type Rule,
} from '../../../core/training.ts';
import { followed, histories } from '../ramp/histories.ts';
import { eventRequests, openRequests } from '../ramp/requests.ts';
import { records } from '../readiness/inputs.ts';
import { evenly } from '../../support/laws.ts';

/** A reason or figure, by its code or id. */
export interface Said extends Provenance {
  readonly code: string;
  readonly text: string;
}

const figures = (all: readonly (Provenance & { id: string; formula: string })[]): Said[] =>
  all.map((figure) => ({ ...figure, code: figure.id, text: figure.formula }));

/** The ends of a range are where most rules bite. */
const place = fc.oneof(evenly(0, 1), fc.constantFrom(0, 1));

/** Up to three rules of a group, each anywhere inside its range on a grid of whole values. */
export function changesOf(...groups: RuleGroup[]): fc.Arbitrary<RuleChanges> {
  const rules = defaultRules().filter(({ group }) => groups.includes(group));
  return fc
    .array(fc.tuple(fc.constantFrom(...rules), place), { maxLength: 3 })
    .map((changes) =>
      Object.fromEntries(
        changes.map(([{ id, min, max }, at]) => [id, Math.round(min + at * (max - min))]),
      ),
    )
    .filter((changes) =>
      rules.every(({ id, min, max }) => {
        const value = (changes as Record<string, number>)[id];
        return value === undefined || (value >= min && value <= max);
      }),
    );
}

const rise = (rules: RuleChanges): boolean => {
  const at = (id: 'heatUsualToC' | 'heatCautionToC' | 'heatHalfToC' | 'heatWalkToC') =>
    rules[id] ?? defaultRules().find((rule) => rule.id === id)!.value;
  const ladder = [at('heatUsualToC'), at('heatCautionToC'), at('heatHalfToC'), at('heatWalkToC')];
  return ladder.every((limit, index) => index === 0 || limit >= ladder[index - 1]!);
};

/** Everything the screening of any record says, under any rules. */
export const screenings = fc.tuple(
  // Scores where a changed limit of body condition bites are rare otherwise.
  fc.oneof(
    records,
    records.map((record) => ({ ...record, bcs: 8 })),
  ),
  changesOf('readiness'),
);
export const screeningSays = ([record, rules]: [
  Parameters<typeof screenForRunning>[0],
  RuleChanges,
]): Said[] => [...screenForRunning({ ...record, rules }).reasons];

const dogs = fc.record({
  bcs: fc.constantFrom(null, 4, 6, 7, 9),
  weightKg: fc.constantFrom(null, 12, 45, 60),
  coat: fc.constantFrom('ordinary' as const, 'thick' as const, 'dark' as const),
  senior: fc.boolean(),
  acclimatised: fc.boolean(),
  shortNosed: fc.boolean(),
  cleared: fc.boolean(),
});
/** Any dog in any air. */
export const airs = fc.tuple(
  fc.record({
    tempC: fc.integer({ min: -35, max: 35 }),
    humidityPct: fc.integer({ min: 20, max: 100 }),
    dog: dogs,
  }),
  changesOf('heat').filter(rise),
);
export const heatSays = ([input, rules]: [Parameters<typeof heatBand>[0], RuleChanges]): Said[] => [
  ...heatBand({ ...input, rules }).reasons,
];

/** Plans with and without an event, under any rules. */
export const plans = fc.tuple(fc.oneof(openRequests, eventRequests), changesOf('ramp'));
export const planSays = ([request, rules]: [
  Parameters<typeof buildRamp>[0],
  RuleChanges,
]): Said[] => [...buildRamp({ ...request, rules }).reasons];

/** The weeks from the third on made twice as heavy. */
const doubled = (ramp: Ramp): Ramp =>
  editRamp(
    ramp,
    ramp.weeks
      .filter(({ number, sessions }) => number > 2 && sessions.length > 0)
      .map(({ number, runMinutes }) => ({ kind: 'week', number, runMinutes: runMinutes * 2 })),
  );

/** A plan with a break of so many days after its second week, and the same made too heavy. */
export function withBreak(days: number): Said[] {
  const startDay = '2026-03-02';
  const daysOut = Array.from({ length: days }, (_, index) => addDays(startDay, 14 + index));
  const goal = { continuousMinutes: 30 };
  const ramp = buildRamp({ startDay, start: 'conditioned', sessionsPerWeek: 3, goal, daysOut });
  return [...ramp.reasons, ...checkRamp(doubled(ramp))];
}

const HANDS = ['week', 'run', 'bouts'] as const;

function edited(ramp: Ramp, at: number, factor: number, hand: (typeof HANDS)[number]): Ramp {
  const weeks = ramp.weeks.filter(({ sessions }) => sessions.length > 0);
  if (weeks.length === 0) return ramp;
  const week = weeks[at % weeks.length]!;
  const more = Math.min(900, Math.max(1, Math.round(week.runMinutes * factor)));
  const { day } = week.sessions.at(-1)!;
  const run = { kind: 'continuous', repeats: 1, runMin: Math.min(200, more) } as const;
  const bouts = { kind: 'bouts', repeats: 2, runMin: 2, walkMin: 2 } as const;
  const edit: RampEdit =
    hand === 'week'
      ? { kind: 'week', number: week.number, runMinutes: more }
      : { kind: 'change', day, to: hand === 'run' ? run : bouts };
  return editRamp(ramp, [edit]);
}

/** Plans with one edit by hand: a heavier week, a session made into one run or into harder bouts. */
export const edits = fc.tuple(
  plans,
  fc.integer({ min: 0, max: 30 }),
  evenly(0.3, 3),
  fc.constantFrom(...HANDS),
);
type Edited = typeof edits extends fc.Arbitrary<infer T> ? T : never;
export const editSays = ([[request, rules], at, factor, hand]: Edited): Said[] =>
  checkRamp(edited(buildRamp({ ...request, rules }), at, factor, hand));

/** Plans that were followed more or less, and their review. */
export const reviews = fc.tuple(histories, changesOf('ramp'));
export const reviewSays = ([history, rules]: [
  Parameters<typeof reviewRamp>[0],
  RuleChanges,
]): Said[] => [...reviewRamp({ ...history, rules }).reasons];

const limb = fc.constantFrom('leftFore', 'rightFore', 'leftHind', 'rightHind');
const measurement = fc.oneof(
  fc.record({
    kind: fc.constant('joint angle' as const),
    limb,
    joint: fc.constantFrom('elbow', 'stifle'),
    movement: fc.constantFrom('flexion', 'extension'),
    value: fc.integer({ min: 20, max: 170 }),
  }),
  fc.record({
    kind: fc.constantFrom('thigh girth' as const, 'standing weight' as const),
    limb,
    value: fc.integer({ min: 5, max: 60 }),
  }),
) as fc.Arbitrary<GaitMeasurement>;
const readings = fc.record({
  leftFore: fc.integer({ min: 1, max: 20 }),
  rightFore: fc.integer({ min: 1, max: 20 }),
  leftHind: fc.integer({ min: 1, max: 20 }),
  rightHind: fc.integer({ min: 1, max: 20 }),
});
/** A dog of any height at any speed, its measurements, the weight on its limbs and its footfalls. */
export const gaits = fc.tuple(
  fc.record({
    speedMps: evenly(0.5, 8),
    heightM: evenly(0.2, 0.9),
    measurement,
    readings,
    lag: evenly(0.05, 0.95),
  }),
  changesOf('gait'),
);
type Gait = typeof gaits extends fc.Arbitrary<infer T> ? T : never;
export function gaitSays([gait, rules]: Gait): Said[] {
  const { speedMps, heightM, lag } = gait;
  const changes = gaitChanges({ heightM, rules });
  const standing = standingShares(gait.readings, undefined, rules);
  const strides = [0, 1, 2, 3, 4, 5, 6];
  const timing = footfallTiming(
    [
      { limb: 'leftHind', touchDowns: strides, liftOffs: [] },
      { limb: 'rightHind', touchDowns: strides.map((start) => start + lag), liftOffs: [] },
    ],
    rules,
  );
  return [
    ...figures([
      likelyGait({ speedMps, heightM, rules }).froude,
      changes.trotSpeed,
      changes.canterSpeed.figure,
      changes.canterPace.figure,
      standing.hindDifferencePercent,
      ...judgeMeasurements([gait.measurement], [], rules).map(({ figure }) => figure),
    ]),
    ...standing.reasons,
    ...timing.reasons,
  ];
}

/** What chance brings too rarely: every ramp rule changed, a walking programme, and bad weeks. */
export function* chosen(): Generator<readonly Said[]> {
  const rules = Object.fromEntries(
    Object.values(RAMP_RULES as Readonly<Record<string, Rule>>).map(({ id, value, max, min }) => [
      id,
      value + 1 <= max ? value + 1 : Math.max(min, value - 1),
    ]),
  );
  const goal = { continuousMinutes: 30 };
  const request = { startDay: '2026-03-02', sessionsPerWeek: 3, goal };
  for (const start of ['conditioned', 'unconditioned', 'post-injury'] as const) {
    yield buildRamp({ ...request, start, rules }).reasons;
  }
  const start = 'conditioned' as const;
  yield buildRamp({ ...request, start, goal: { continuousMinutes: 100 } }).reasons;
  const walks = buildRamp({ ...request, start, programme: 'walking' });
  yield walks.reasons;
  // A walking programme with five weeks away, and one that was left for as long.
  const daysOut = Array.from({ length: 35 }, (_, index) => addDays('2026-03-09', index));
  yield buildRamp({ ...request, start, programme: 'walking', daysOut }).reasons;
  yield reviewRamp({ ramp: walks, results: followed(walks, 5), day: '2026-04-20' }).reasons;
  const ramp = buildRamp({ ...request, start });
  const easy = ramp.weeks.at(-1)!.sessions[1]!.day;
  yield checkRamp(editRamp(ramp, [{ kind: 'change', day: easy, to: { runMin: 28 } }]));
  const days = ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day));
  const after = (responses: readonly NextDayResponse[]): Said[] => {
    const results = responses.map((nextDay, index) => ({
      day: days[index]!,
      outcome: 'done' as const,
      nextDay,
    }));
    return [
      ...reviewRamp({ ramp, results, rules }).reasons,
      ...reviewRamp({ ramp, results }).reasons,
    ];
  };
  yield after(['stiffness over 24 h', 'stiffness cleared and returned']);
  yield after(['stiffness over 24 h', 'stiffness over 24 h', 'stiffness over 24 h']);
  yield reviewRamp({ ramp, wellSince: days[1]!, day: days[2]! }).reasons;
}
