import { addDays, dayNumber, daysBetween, weekday, type IsoDay } from '../day.ts';
import type { Provenance } from '../figure.ts';
import { from, OWN, PRACTICE } from '../origin.ts';
import { RAMP_RULES, type RampRuleId } from '../rules/ramp.ts';
import { changeNote, type Rule } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import type { Breach, BreachCode } from './editTypes.ts';
import { breakGrounds } from './breakRules.ts';
import { sessionLimit, startsAnew } from './limits.ts';
import { sessionLevel } from './level.ts';
import { EPSILON } from './load.ts';
import { stepText } from './path.ts';
import { BOUT_RULE, CAP_RULE } from './request.ts';
import { MOST_RUNNING_DAYS } from './schedule.ts';
import type { Ramp } from './types.ts';
import { alongPath, type Walk, type WalkedWeek } from './walk.ts';

/** A breach before the practitioner's reason is looked up. */
export type Found = Omit<Breach, 'keptBecause'>;

const REST: Provenance = from('C', 'CP', 'commonPractice');
/** What a hand edit may be over a limit before it is called so, minutes: half a second. */
const SLACK_MIN = 0.01;

interface Told {
  readonly code: BreachCode;
  readonly weekIndex: number;
  readonly day?: IsoDay | null;
  readonly text: string;
  readonly params?: Breach['params'];
  readonly gravity?: Breach['gravity'];
  readonly change?: string;
}

function told(breach: Told, provenance: Provenance): Found {
  const { day = null, params = {}, gravity = 'breach' } = breach;
  return { ...breach, day, params, gravity, ...provenance };
}

const short = (minutes: number): string => String(Number(minutes.toFixed(1)));

/** Too many run-minutes for what came before: cap, recovery, easy days, return after a break. */
export function loadBreaches(ramp: Ramp, walk: Walk): Found[] {
  return walk.weeks.flatMap((walked, weekIndex): Found[] => {
    const { week, limit } = walked;
    if (week.runMinutes <= limit + SLACK_MIN) return [];
    const { code, why, provenance, note } = overWhat(ramp, walked);
    const minutes = short(week.runMinutes);
    return [
      told(
        {
          code,
          weekIndex,
          text: `Week ${week.number}: ${minutes} run-minutes, ${short(limit)} at most ${why}${note}.`,
          params: { minutes: week.runMinutes, limit },
          change: `At most ${short(limit)} run-minutes.`,
        },
        provenance,
      ),
    ];
  });
}

interface Over {
  readonly code: BreachCode;
  readonly why: string;
  readonly provenance: Provenance;
  /** " (set by the practice; …)" where the rule is changed. */
  readonly note: string;
}

function overWhat(ramp: Ramp, { slot, before, recovery }: WalkedWeek): Over {
  const { rules } = ramp;
  const by = (id: RampRuleId, value: number, others: readonly RampRuleId[] = []) => ({
    provenance: provenanceOf(RAMP_RULES[id], value, others),
    note: changeNote(RAMP_RULES[id], value),
  });
  if (slot.kind === 'event' || slot.kind === 'bridge') {
    const grounds = by('easyBeforeEventPercent', rules.easyBeforeEventPercent);
    return { code: 'event-week-not-easy', why: 'in the easy days before the event', ...grounds };
  }
  if (recovery) {
    const why = `in an easy week of ${rules.recoveryPercent} % of the highest week`;
    const grounds = by('recoveryPercent', rules.recoveryPercent, ['recoveryEvery']);
    return { code: 'recovery-missing', why, ...grounds };
  }
  if (slot.return.kind === 'repeat' && slot.return.missedDays === 0) {
    const why = 'in the first week after an illness';
    return { code: 'over-cap', why, provenance: OWN, note: '' };
  }
  if (slot.return.kind !== 'none') {
    const why = `after ${slot.return.missedDays} missed days`;
    return { code: 'over-cap', why, ...breakGrounds(slot.return, rules) };
  }
  const { start } = ramp.request;
  if (before.peak === 0) {
    const id = BOUT_RULE[start];
    return { code: 'over-cap', why: 'in the first week', ...by(id, rules[id]) };
  }
  const why = `with a rise of ${ramp.capPercent} % over the highest whole week before, and after a break of ${rules.returnRisePercent} % over the last`;
  return { code: 'over-cap', why, ...by(CAP_RULE[start], ramp.capPercent, ['returnRisePercent']) };
}

/** A note, never a gate: a hand edit that rises fast over two weeks. */
export function riseNotes(ramp: Ramp, walk: Walk): Found[] {
  const rule: Rule = RAMP_RULES.twoWeekRisePercent;
  const percent = ramp.rules.twoWeekRisePercent;
  return walk.weeks.flatMap(({ week }, weekIndex): Found[] => {
    if (week.edited !== true || weekIndex < 2) return [];
    const earlier = ramp.weeks.slice(0, weekIndex - 1).map(({ runMinutes }) => runMinutes);
    const highest = Math.max(...earlier);
    const rise = (week.runMinutes / highest - 1) * 100;
    if (highest === 0 || rise <= percent + EPSILON) return [];
    const text = `Week ${week.number} lies ${short(rise)} % over the highest week up to two weeks before: rises over ${percent} % in two weeks did worse in novice runners.`;
    return [
      told(
        { code: 'two-week-rise', weekIndex, text, params: { rise }, gravity: 'note' },
        provenanceOf(rule, percent),
      ),
    ];
  });
}

/**
 * Sessions against the longest run of the last 30 days. A plan of an older release, made before
 * the rule, is not judged by it.
 */
export function sessionBreaches(ramp: Ramp, walk: Walk): Found[] {
  const rules: Readonly<Record<string, number | undefined>> = ramp.rules;
  if (rules['sessionRisePercent'] === undefined) return [];
  const percent = ramp.rules.sessionRisePercent;
  const provenance = provenanceOf(RAMP_RULES.sessionRisePercent, percent, [
    'sessionStepMinutes',
    'sessionWindowDays',
  ]);
  return walk.weeks.flatMap(({ week, before }, weekIndex) => {
    let { recent } = before;
    return week.sessions.flatMap(({ day, runMinutes }): Found[] => {
      const limit = sessionLimit(walk, recent, day);
      recent = [...recent, { day, minutes: runMinutes, response: 'clean' }];
      if (runMinutes <= limit + SLACK_MIN) return [];
      const text = `${day}: ${short(runMinutes)} run-minutes in one session, ${short(limit)} at most after the runs of the ${ramp.rules.sessionWindowDays} days before.`;
      const params = { minutes: runMinutes, limit };
      const change = `At most ${short(limit)} run-minutes.`;
      return [told({ code: 'session-too-long', weekIndex, day, text, params, change }, provenance)];
    });
  });
}

/** The bout path: no step skipped, each with its sessions. */
export function pathBreaches(ramp: Ramp, walk: Walk): Found[] {
  const { path } = walk.setting;
  const needed = ramp.rules.sessionsPerStep;
  return walk.weeks.flatMap(({ week, before, slot }, weekIndex): Found[] => {
    let state = startsAnew(before, slot) ? { ...before, stepIndex: 0, sessionsOnStep: 0 } : before;
    return week.sessions.flatMap((session): Found[] => {
      const { stepIndex, sessionsOnStep } = state;
      const level = sessionLevel(path, session);
      state = alongPath(walk, state, [session]);
      if (level <= stepIndex) return [];
      const step = stepText(path[level] ?? null);
      const { day } = session;
      const at = { weekIndex, day } as const;
      if (level > stepIndex + 1) {
        const text = `Week ${week.number} goes to “${step}” and skips “${stepText(path[stepIndex + 1] ?? null)}”.`;
        return [told({ code: 'bout-path', ...at, text, params: { step } }, pathProvenance(ramp))];
      }
      if (sessionsOnStep >= needed) return [];
      const text = `Week ${week.number} goes to “${step}” before ${needed} clean sessions of “${stepText(path[stepIndex] ?? null)}”.`;
      return [
        told(
          { code: 'step-too-soon', ...at, text, params: { step, needed } },
          pathProvenance(ramp),
        ),
      ];
    });
  });
}

function pathProvenance({ rules }: Ramp): Provenance {
  return provenanceOf(RAMP_RULES.sessionsPerStep, rules.sessionsPerStep);
}

/** The first run without a break is no longer than the run-minutes of the fullest session of bouts. */
export function firstRunBreaches(walk: Walk): Found[] {
  return walk.weeks.flatMap(({ week, before, slot }, weekIndex): Found[] => {
    if (before.continuous || startsAnew(before, slot)) return [];
    let { fullest } = before;
    return week.sessions.flatMap(({ kind, day, runMinutes }): Found[] => {
      const limit = fullest;
      if (kind === 'bouts') fullest = Math.max(fullest, runMinutes);
      if (kind !== 'continuous' || runMinutes <= limit + SLACK_MIN) return [];
      const text = `${day}: ${short(runMinutes)} min without a break, ${short(limit)} at most in the first such week: the run-minutes of the fullest session of bouts before.`;
      const params = { minutes: runMinutes, limit };
      const change = `At most ${short(limit)} min without a break.`;
      return [told({ code: 'first-run-too-long', weekIndex, day, text, params, change }, OWN)];
    });
  });
}

/** Running days: none next to another, few enough, on days the owner can run, inside the plan. */
export function dayBreaches(ramp: Ramp, walk: Walk): Found[] {
  const { request } = ramp;
  const { weekdays, out } = walk.setting.availability;
  const walking = walk.setting.programme === 'walking';
  let last: IsoDay | null = request.resume?.lastRunDay ?? null;
  return walk.weeks.flatMap(({ week, slot }, weekIndex) => {
    const found: Found[] = [];
    const add = (breach: Omit<Told, 'weekIndex'>, provenance: Provenance): void => {
      found.push(told({ ...breach, weekIndex }, provenance));
    };
    for (const { day } of week.sessions) {
      if (!walking && last !== null && daysBetween(last, day) < 2) {
        const text = `${day} follows on the running day ${last}: no two running days in a row.`;
        add({ code: 'consecutive-days', day, text }, REST);
      }
      last = day;
      if (day < walk.setting.startDay) {
        const text = `${day} lies before ${walk.setting.startDay}, the first day allowed.`;
        add({ code: 'before-allowed-day', day, text }, PRACTICE);
      }
      if (request.eventDay !== undefined && day >= addDays(request.eventDay, -1)) {
        const text = `${day} lies on, after or right before the event on ${request.eventDay}.`;
        add({ code: 'after-event', day, text }, PRACTICE);
      }
      if (out.has(dayNumber(day))) {
        add({ code: 'day-out', day, text: `${day} is marked as a day without running.` }, PRACTICE);
      }
      if (!weekdays.includes(weekday(day))) {
        const text = `${day} is not one of the days on which the owner can run.`;
        add({ code: 'weekday', day, text }, PRACTICE);
      }
    }
    if (!walking && week.sessions.length > MOST_RUNNING_DAYS) {
      const text = `Week ${week.number} has ${week.sessions.length} running days, ${MOST_RUNNING_DAYS} at most.`;
      add({ code: 'too-many-days', text }, REST);
    }
    if (!walking && slot.days.length >= 7) {
      add({ code: 'no-rest-day', text: `Week ${week.number} has no full rest day.` }, REST);
    }
    return found;
  });
}

/** Once continuous: after the longest (or a hilly) run the next running day is easy. */
export function easyAfterLong(ramp: Ramp, walk: Walk): Found[] {
  const most = ramp.rules.mediumPercent;
  return walk.weeks.flatMap(({ week }, weekIndex): Found[] => {
    const { sessions } = week;
    if (!sessions.every(({ kind }) => kind === 'continuous')) return [];
    const longest = Math.max(0, ...sessions.map(({ runMinutes }) => runMinutes));
    if (longest <= ramp.rules.equalUntilMinutes) return [];
    return sessions.slice(1).flatMap((session, index): Found[] => {
      const before = sessions[index]!;
      const hard = before.runMinutes >= longest - EPSILON || before.focus === 'hills';
      if (!hard || session.runMinutes <= (longest * most) / 100 + SLACK_MIN) return [];
      const text = `${session.day} follows on the longest or a hilly run and is not easy.`;
      const { day } = session;
      const from: Provenance = { ...PRACTICE, rules: ['mediumPercent'] };
      return [told({ code: 'longest-not-followed-by-easy', weekIndex, day, text }, from)];
    });
  });
}
