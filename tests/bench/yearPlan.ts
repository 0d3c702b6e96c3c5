import { addDays, buildRamp, reviewRamp, type Ramp, type SessionResult } from '../../core/index.ts';
import { compare, median, roundsOf, timed, type BenchLine } from './measure.ts';

const START = '2026-01-05';
const REVIEW_EVERY_DAYS = 28;
const REVIEWS = 12;

/** About a year from the first half-minute bouts. */
const yearPlan = (): Ramp =>
  buildRamp({
    startDay: START,
    start: 'post-injury',
    sessionsPerWeek: 3,
    goal: { distanceKm: 10, paceMinPerKm: 6.5 },
  });

/** A clean review every four weeks, each on the version before it. */
function versionsOf(first: Ramp): Ramp[] {
  const versions = [first];
  for (let number = 1; number <= REVIEWS; number += 1) {
    const ramp = versions.at(-1)!;
    const day = addDays(START, number * REVIEW_EVERY_DAYS);
    const results: SessionResult[] = ramp.weeks
      .flatMap(({ sessions }) => sessions)
      .filter((session) => session.day < day)
      .map((session) => ({ day: session.day, outcome: 'done', nextDay: 'normal' }));
    versions.push(reviewRamp({ ramp, day, results }).ramp);
  }
  return versions;
}

/** A year's plan and its versions, against writing them to JSON and reading them back. */
export async function measureYearPlan(): Promise<BenchLine[]> {
  const kept = versionsOf(yearPlan());
  const { ratio, oursMs, theirsMs } = await compare(
    () => versionsOf(yearPlan()),
    () => JSON.parse(JSON.stringify(kept)) as unknown,
    { rounds: 25, warmUp: 5 },
  );
  const builds: number[] = [];
  for (let round = 0; round < roundsOf(25); round += 1) builds.push(await timed(yearPlan));
  return [
    {
      name: `A plan of ${kept[0]!.weeks.length} weeks with ${REVIEWS} reviews`,
      against: 'write its versions to JSON and read them back',
      value: ratio,
      unit: '×',
      note: `${oursMs.toFixed(1)} ms / ${theirsMs.toFixed(1)} ms; the plan alone ${median(builds).toFixed(1)} ms`,
    },
  ];
}
