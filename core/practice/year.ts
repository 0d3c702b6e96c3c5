import { addMonths, daysBetween, type IsoDay } from '../day.ts';
import type { Estimate, Reason } from '../figure.ts';
import type { DogYear, LossCourse } from './dogYear.ts';
import type { ProgrammeCourse } from './programmes.ts';
import { shareOf } from './share.ts';

/** A dog of the year, by any key of the caller's. */
export interface CountedDog extends DogYear {
  readonly dogId: string;
}

/** What happened in one month, each as the dogs it happened to. */
export interface YearMonth {
  /** First day of the month. */
  readonly day: IsoDay;
  readonly started: readonly string[];
  readonly reached: readonly string[];
  readonly stopped: readonly string[];
  /** Last heard of in this month, and lost from sight since. */
  readonly lost: readonly string[];
}

/** How a programme that began in the year stands now. */
export type YearOutcome = ProgrammeCourse['end']['kind'] | 'lost';

/** One way in which programmes ended, and its share of all that ended. */
export interface OutcomeCount {
  readonly outcome: YearOutcome;
  readonly dogIds: readonly string[];
  /** In %; null for programmes that are still under way. */
  readonly share: Estimate | null;
}

/** Time to the goal, days from the first outing. */
export interface GoalTime {
  readonly dogId: string;
  readonly plannedDays: number | null;
  readonly takenDays: number;
}

export interface PracticeYear {
  readonly months: readonly YearMonth[];
  /** Programmes that began in the year. */
  readonly begun: number;
  /** Those of them that came to an end. */
  readonly ended: number;
  readonly outcomes: readonly OutcomeCount[];
  /** Why running was stopped in the year, the commonest first. */
  readonly stops: readonly { readonly cause: string; readonly dogIds: readonly string[] }[];
  /** Goals reached in the year. */
  readonly times: readonly GoalTime[];
  /** Losses with weighings in the year, the slowest first. */
  readonly losses: readonly (LossCourse & { readonly dogId: string })[];
  /** How many of them kept inside the corridor, %. */
  readonly insideCorridor: Estimate | null;
}

const ENDED: readonly YearOutcome[] = ['reached', 'stopped', 'lost', 'not told'];
const GOING: readonly YearOutcome[] = ['under way', 'waiting'];

/** Why running was stopped, by the code of the reason. */
const CAUSES: Readonly<Record<string, string>> = {
  'review-stiff-48': 'Stiff for over 48 h after an outing',
  'review-lameness-walk': 'Lame at walk at a visit',
  'review-lameness-trot': 'Lame at trot at a visit',
  'review-sign': 'A warning sign at a visit',
  'review-vet-first': 'The screening: vet first',
  'review-walking-only': 'The screening: walking only',
  'review-still-walking': 'The screening: walking only',
  'review-not-cleared': 'Not cleared by the vet since an earlier stop',
};

/**
 * The practice's year from `fromDay` to `toDay`: what began, ended and was lost in each month, how
 * the programmes that began in it ended, how long goals took against their plans, and how losses
 * kept to the corridor.
 * @example practiceYear([{ dogId: 'a', ...dogYear(sample.runner, sample.state) }], {
 *   fromDay: '2026-01-01',
 *   toDay: '2026-12-31',
 * }) // => { begun: 1, ended: 0, stops: [], … }
 */
export function practiceYear(
  dogs: readonly CountedDog[],
  { fromDay, toDay }: { readonly fromDay: IsoDay; readonly toDay: IsoDay },
): PracticeYear {
  const within = (day: IsoDay): boolean => day >= fromDay && day <= toDay;
  const courses = dogs.flatMap((dog) =>
    dog.programmes.map((course, index) => ({
      ...course,
      dogId: dog.dogId,
      outcome: outcomeOf(dog, index),
    })),
  );
  const begun = courses.filter(({ startedOn }) => within(startedOn));
  const ended = begun.filter(({ outcome }) => ENDED.includes(outcome));
  const losses = dogs
    .flatMap(({ dogId, loss }) => (loss === null ? [] : [{ dogId, ...loss }]))
    .filter((loss) => loss.toDay >= fromDay && loss.fromDay <= toDay)
    .sort((a, b) => a.percentPerWeek - b.percentPerWeek);
  return {
    months: monthsOf(fromDay, toDay, (inMonth) => ({
      started: idsOf(courses.filter(({ startedOn }) => inMonth(startedOn))),
      reached: idsOf(reachedIn(courses, inMonth)),
      stopped: idsOf(stoppedIn(courses, inMonth)),
      lost: idsOf(dogs.filter(({ lostSince }) => lostSince !== null && inMonth(lostSince))),
    })),
    begun: begun.length,
    ended: ended.length,
    outcomes: [...ENDED, ...GOING].map((outcome) => {
      const such = begun.filter((course) => course.outcome === outcome);
      const share = GOING.includes(outcome)
        ? null
        : shareOf(`Programmes that ended: ${outcome}`, such.length, ended.length);
      return { outcome, dogIds: idsOf(such), share };
    }),
    stops: stopsOf(stoppedIn(courses, within)),
    times: reachedIn(courses, within).map(({ dogId, startedOn, plannedDays, end }) => ({
      dogId,
      plannedDays,
      takenDays: daysBetween(startedOn, end.day),
    })),
    losses,
    insideCorridor: shareOf(
      'Losses inside the corridor',
      losses.filter(({ against }) => against === 'inside').length,
      losses.length,
    ),
  };
}

type Course = ProgrammeCourse & { readonly dogId: string };
type Counts = (day: IsoDay) => boolean;

/** The latest programme of a dog that was lost from sight is not under way any more. */
function outcomeOf({ programmes, lostSince }: CountedDog, index: number): YearOutcome {
  const { kind } = programmes[index]!.end;
  const isLast = index === programmes.length - 1;
  return isLast && lostSince !== null && kind !== 'reached' && kind !== 'stopped' ? 'lost' : kind;
}

const reachedIn = (courses: readonly Course[], counts: Counts) =>
  courses.flatMap((course) => {
    const { end } = course;
    return end.kind === 'reached' && counts(end.day) ? [{ ...course, end }] : [];
  });

const stoppedIn = (courses: readonly Course[], counts: Counts) =>
  courses.flatMap((course) => {
    const { end } = course;
    return end.kind === 'stopped' && counts(end.day) ? [{ ...course, end }] : [];
  });

/** Each dog once. */
const idsOf = (entries: readonly { readonly dogId: string }[]): string[] => [
  ...new Set(entries.map(({ dogId }) => dogId)),
];

function monthsOf(
  fromDay: IsoDay,
  toDay: IsoDay,
  count: (inMonth: (day: IsoDay) => boolean) => Omit<YearMonth, 'day'>,
): YearMonth[] {
  const months: YearMonth[] = [];
  for (let day = `${fromDay.slice(0, 7)}-01`; day <= toDay; day = addMonths(day, 1)) {
    const month = day.slice(0, 7);
    const inMonth = (at: IsoDay): boolean => at.startsWith(month) && at >= fromDay && at <= toDay;
    months.push({ day, ...count(inMonth) });
  }
  return months;
}

/** A stop counts under every cause it had. */
function stopsOf(stopped: ReturnType<typeof stoppedIn>): PracticeYear['stops'] {
  const found = new Map<string, string[]>();
  for (const { dogId, end } of stopped) {
    const causes = new Set(end.reasons.flatMap(causeOf));
    for (const cause of causes.size === 0 ? ['Not written down'] : causes) {
      found.set(cause, [...new Set([...(found.get(cause) ?? []), dogId])]);
    }
  }
  return [...found]
    .map(([cause, dogIds]) => ({ cause, dogIds }))
    .sort((a, b) => b.dogIds.length - a.dogIds.length || a.cause.localeCompare(b.cause));
}

function causeOf({ code, params }: Reason): string[] {
  if (code === 'review-stop-sign') return [`On an outing: ${params['sign']}`];
  const cause = CAUSES[code];
  return cause === undefined ? [] : [cause];
}
