import { weighingsUpTo } from '../assess/course.ts';
import type {
  PresentInput,
  PresentPlan,
  PresentDecision,
  PresentState,
} from '../assess/presentState.ts';
import type { AssessedVisit } from '../assess/types.ts';
import { addDays, type IsoDay } from '../day.ts';
import { LOSS_MAX_PERCENT, LOSS_MIN_PERCENT } from '../weight/corridor.ts';
import { weightTrend } from '../weight/trend.ts';
import { programmeCourses, type ProgrammeCourse } from './programmes.ts';

/** A weighing overdue for longer than this means that the dog has likely left (D). */
export const LOST_AFTER_DAYS = 90;

/** A rate needs this many days of weighings before it is set beside others (German 2011, S). */
const RATE_AFTER_DAYS = 14;

/** How fast a dog lost while its aim was to lose, % of the weight at the start per week. */
export interface LossCourse {
  readonly fromDay: IsoDay;
  /** The last weighing that counts. */
  readonly toDay: IsoDay;
  /** Positive for a loss, with its 90 % interval. */
  readonly percentPerWeek: number;
  readonly low: number;
  readonly high: number;
  readonly against: 'inside' | 'slower' | 'faster';
  /** A weighing stands out; the rate is to be looked at twice. */
  readonly flagged: boolean;
}

/** What the practice's year counts of one dog. */
export interface DogYear {
  readonly programmes: readonly ProgrammeCourse[];
  /** The latest stretch of visits with the aim to lose; null without one that tells a rate. */
  readonly loss: LossCourse | null;
  /** Since when nothing was heard of a dog that was not at its goal; null for any other. */
  readonly lostSince: IsoDay | null;
}

/**
 * What a dog's record adds to the practice's year, as it stands on the state's day.
 * Lost from sight: the next weighing is overdue by more than `LOST_AFTER_DAYS`, while a programme
 * was not at its end or weight was still to be lost or gained.
 * @example dogYear(sample.runner, sample.state) // => { loss: null, lostSince: null, … }
 */
export function dogYear<P extends PresentPlan, D extends PresentDecision>(
  { record, plans, results }: PresentInput<P, D>,
  state: PresentState<P, D>,
): DogYear {
  const { day } = state;
  const weighings = weighingsUpTo(day, record.visits, record.weighings);
  const programmes = programmeCourses(plans, results, state.programme, day);
  const heard = [...record.visits, ...weighings, ...results]
    .map((entry) => entry.day)
    .filter((seen) => seen <= day);
  return {
    programmes,
    loss: lossCourse(
      record.visits.filter((visit) => visit.day <= day),
      weighings,
    ),
    lostSince: isLost(state, programmes) ? (heard.sort().at(-1) ?? null) : null,
  };
}

function isLost(state: PresentState<PresentPlan>, programmes: readonly ProgrammeCourse[]): boolean {
  const weigh = state.due.find(({ what }) => what === 'weigh')?.day;
  if (weigh === undefined || addDays(weigh, LOST_AFTER_DAYS) >= state.day) return false;
  const end = programmes.at(-1)?.end.kind;
  const unfinished = end === 'under way' || end === 'waiting' || end === 'not told';
  const { against } = state.weight;
  const short =
    (state.aim === 'lose' && against === 'above') || (state.aim === 'gain' && against === 'below');
  return unfinished || short;
}

/** The latest run of visits with the aim to lose, up to the visit that ended it. */
function lossCourse(
  visits: readonly AssessedVisit[],
  weighings: ReturnType<typeof weighingsUpTo>,
): LossCourse | null {
  const last = visits.findLastIndex(({ foodGoal }) => foodGoal === 'lose');
  if (last < 0) return null;
  const before = visits.slice(0, last).findLastIndex(({ foodGoal }) => foodGoal !== 'lose');
  const from = visits.slice(before + 1).find(({ weightKg }) => weightKg !== null)?.day;
  const ended = visits[last + 1]?.day;
  const own = weighings.filter(
    ({ day }) => from !== undefined && day >= from && (ended === undefined || day <= ended),
  );
  const { percentPerWeek, low, high, spanDays, flagged } = weightTrend(own);
  if (percentPerWeek === null || low === null || high === null) return null;
  if (spanDays < RATE_AFTER_DAYS) return null;
  const rate = -percentPerWeek;
  const against =
    rate < LOSS_MIN_PERCENT ? 'slower' : rate > LOSS_MAX_PERCENT ? 'faster' : 'inside';
  return {
    fromDay: own[0]!.day,
    toDay: own.at(-1)!.day,
    percentPerWeek: rate,
    low: -high,
    high: -low,
    against,
    flagged: flagged.some(({ outlier }) => outlier),
  };
}
