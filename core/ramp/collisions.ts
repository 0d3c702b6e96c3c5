import type { IsoDay } from '../day.ts';
import { weekCap } from './load.ts';
import type { Course } from './limits.ts';
import { CAP_RULE } from './request.ts';
import type { RuleCollision } from './types.ts';

/**
 * Rules whose values exclude each other: the load stops growing although the goal is not met,
 * because what the caps allow is smaller than the next bout.
 */
export function collisionsOf({ ladder, setting }: Course, reached: IsoDay | null): RuleCollision[] {
  if (reached !== null || ladder.reachesGoal) return [];
  const last = ladder.rungs.at(-1)!;
  const peak = Math.max(...ladder.rungs.map(({ minutes }) => minutes));
  const cap = weekCap(peak, setting.capPercent, setting.rules);
  const room = Number((cap - peak).toFixed(2));
  const step = setting.path[last.stepIndex];
  const bout =
    step === undefined ? 'a minute more in each run' : `a longer week of ${step.runMin} min bouts`;
  return [
    {
      rules: [
        CAP_RULE[setting.start],
        'sessionRisePercent',
        'boutsPerSession',
        'leastSharePercent',
      ],
      text: `From ${peak} run-minutes a week the caps leave room for ${room} min more, too little for ${bout}. The load cannot grow: raise the weekly rise, or let a session hold fewer bouts.`,
    },
  ];
}
