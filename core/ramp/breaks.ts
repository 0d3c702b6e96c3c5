import { daysBetween } from '../day.ts';
import type { Reason } from '../figure.ts';
import { OWN } from '../origin.ts';
import type { RampRuleValues } from '../rules/ramp.ts';
import { breakGrounds } from './breakRules.ts';
import { lastRunWeek } from './done.ts';
import type { Seen } from './judge.ts';
import { programmeOf } from './outing.ts';
import { missedBefore, type Followed } from './replay.ts';
import type { Review, ReviewDecision } from './reviewTypes.ts';
import { returnAfter, type Return } from './slots.ts';

/** True while there is no running that a break could take minutes off. */
function notBegun({ ramp, done }: Followed): boolean {
  return lastRunWeek(done) === -1 && (ramp.request.resume?.lastRunDay ?? null) === null;
}

/** The break up to the day of the review. A plan that has not begun only waits, or grows stale. */
export function breakBefore(followed: Followed, rules: RampRuleValues): Return {
  const { ramp, done } = followed;
  const { day, due } = done;
  if (notBegun(followed)) {
    const first = due[0]?.session.day ?? ramp.weeks[0]?.sessions[0]?.day;
    const back = returnAfter(first === undefined ? 0 : daysBetween(first, day), rules);
    return back.kind === 'restart' ? back : { kind: 'none' };
  }
  return returnAfter(missedBefore(followed), rules);
}

export function breakOf(back: Return): Review['returnAfterBreak'] {
  if (back.kind === 'none' || back.kind === 'repeat') return null;
  const lessPercent = back.kind === 'less' ? back.percent : 100;
  return { days: back.missedDays, lessPercent };
}

/** What a break asks for, and why. */
export function breakSeen(back: Return, followed: Followed, rules: RampRuleValues): Seen[] {
  if (back.kind === 'none') return notBegunSeen(followed);
  const days = back.missedDays;
  const { provenance, note } = breakGrounds(back, rules);
  const seen = (decision: ReviewDecision, code: string, text: string): Seen => {
    const params = { days, version: followed.ramp.version };
    const reason: Reason = { code, text: `${text}${note}.`, params, ...provenance };
    return { decision, reason };
  };
  if (back.kind === 'repeat') {
    return [
      seen('hold', 'review-break-repeat', `${days} days without a run: the week is repeated`),
    ];
  }
  if (back.kind === 'restart') {
    if (programmeOf(followed.ramp) === 'walking') {
      return [
        seen('back', 'review-break-anew', `${days} days without a walk: the walks begin anew`),
      ];
    }
    const text = `${days} days without a run: back to the walk base, then from the start`;
    return [seen('back', 'review-break-restart', text)];
  }
  const text = `${days} days without a run: ${back.percent} % less than before`;
  return [seen('back', 'review-break-less', text)];
}

function notBegunSeen(followed: Followed): Seen[] {
  const { due, waited } = followed.done;
  if (!notBegun(followed) || (due.length === 0 && !waited)) return [];
  const text = 'Nothing of the plan was done yet: it begins with its first week.';
  return [{ decision: 'hold', reason: { code: 'review-not-begun', text, params: {}, ...OWN } }];
}
