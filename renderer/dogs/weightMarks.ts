import type { DogFile } from '../../electron/contract/contract.ts';
import type { ChartMark } from '../chart/weightSeries.ts';
import { STAGE_WORDS } from '../words.ts';
import type { Shown } from '../units/shown.ts';

type Marked = Pick<DogFile, 'foodDecisions' | 'plans' | 'visits'>;

/**
 * What happened to the weight's course from a day on: another amount of food, a version of the plan,
 * a later stage of it, another body condition. What stayed as it was is no mark.
 */
export function weightMarks(file: Marked, fromDay: string, shown: Shown): ChartMark[] {
  return [...foods(file, shown), ...plans(file), ...stages(file), ...scores(file)]
    .filter(({ day }) => day >= fromDay)
    .sort((a, b) => a.day.localeCompare(b.day));
}

function foods({ foodDecisions }: Marked, shown: Shown): ChartMark[] {
  return foodDecisions.flatMap(({ decidedOn, kcalPerDay }, index) => {
    const before = foodDecisions[index - 1]?.kcalPerDay;
    if (before !== undefined && Math.round(before) === Math.round(kcalPerDay)) return [];
    return [{ day: decidedOn, words: shown.figure(kcalPerDay, 'kcal/day') }];
  });
}

const plans = ({ plans: all }: Marked): ChartMark[] =>
  all.map(({ madeOn, version }) => ({ day: madeOn, words: `plan ${version}` }));

/** Of the plan in force, those after the first. */
function stages({ plans: all }: Marked): ChartMark[] {
  const ramp = all.find(({ current }) => current)?.ramp;
  return (ramp?.stages ?? [])
    .filter(({ id }) => id !== 'time')
    .map(({ id, fromDay }) => ({ day: fromDay, words: STAGE_WORDS[id] }));
}

function scores({ visits }: Marked): ChartMark[] {
  const scored = visits.flatMap(({ day, bcs }) => (bcs === null ? [] : [{ day, bcs }]));
  return scored.flatMap(({ day, bcs }, index) =>
    scored[index - 1]?.bcs === bcs ? [] : [{ day, words: `score ${bcs} of 9` }],
  );
}
