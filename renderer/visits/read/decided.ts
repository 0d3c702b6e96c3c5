import { weighOut } from '../../../core/index.ts';
import type { DogFile, FoodDecision, Plan, Visit } from '../../../electron/contract/contract.ts';
import { DECIDED_WORDS } from '../../food/verdicts.ts';
import { decisionHead, ORIGIN_WORDS, ownerSentence, rampSentence } from '../../plans/rampText.ts';
import type { Shown } from '../../units/shown.ts';

/** What was decided at a visit; one made anew the same day stands behind the first. */
export interface Decided {
  readonly plans: readonly Plan[];
  readonly foods: readonly FoodDecision[];
}

export const decidedAt = (file: DogFile, { id }: Visit): Decided => ({
  plans: file.plans.filter(({ visitId }) => visitId === id),
  foods: file.foodDecisions.filter(({ visitId }) => visitId === id),
});

/** Each version of the plan in a line; null where none was made. */
export function planText({ plans }: Decided, shown: Shown): string | null {
  const lines = plans.map(({ version, origin, ramp, review, note }) =>
    [
      `Version ${version}, ${ORIGIN_WORDS[origin]}.`,
      review === null ? '' : `${decisionHead(review)}.`,
      rampSentence(ramp, shown),
      ownerSentence(ramp),
      note,
    ]
      .filter((part) => part !== '')
      .join(' '),
  );
  return lines.length === 0 ? null : lines.join('\n');
}

/** Each decision on the food with what goes into the bowl a day; null where none was taken. */
export function foodText({ foods }: Decided, shown: Shown): string | null {
  const lines = foods.flatMap(({ kcalPerDay, decision, note, ration }) => {
    const amount = shown.amount('energyPerDay', kcalPerDay);
    const items = ration === null ? [] : weighOut(ration).items;
    return [
      [`${amount}, ${DECIDED_WORDS[decision]}.`, note].filter((part) => part !== '').join(' '),
      ...items.map(
        ({ name, gramsPerDay }) => `${name}: ${shown.amount('grams', gramsPerDay)} a day`,
      ),
    ];
  });
  return lines.length === 0 ? null : lines.join('\n');
}
