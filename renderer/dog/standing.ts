import type { Assessment } from '../../core/index.ts';
import type { Plan } from '../../electron/contract/contract.ts';
import { weekAt } from '../plan/rampText.ts';
import type { Shown } from '../units/shown.ts';

const READY = {
  'ready to start': 'is ready to run',
  'walking only': 'should only walk for now',
  'vet first': 'should see the vet before running',
} as const;

/** Where the dog stands, in two or three short sentences. */
export function standing(
  name: string,
  assessment: Assessment,
  plan: Plan | null,
  today: string,
  shown: Shown,
): string {
  return [
    `${name} ${READY[assessment.screening.outcome]}.`,
    weightSentence(assessment, shown),
    planSentence(plan, today, shown),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function weightSentence(assessment: Assessment, shown: Shown): string {
  const { weightKg, targetWeightKg, targetChosen } = assessment;
  const now = shown.amount('weight', weightKg);
  if (!targetChosen) return `Weight ${now}.`;
  const above = weightKg - targetWeightKg;
  if (Math.abs(above) < 0.05) return `Weight ${now}, at the target.`;
  const gap = shown.amount('weight', Math.abs(above));
  return `Weight ${now}, ${gap} ${above > 0 ? 'above' : 'below'} the target.`;
}

function planSentence(plan: Plan | null, today: string, shown: Shown): string {
  if (plan === null) return '';
  const { weeks } = plan.ramp;
  if (weeks.length === 0) return 'No running is planned.';
  const first = weeks[0]?.sessions[0]?.day;
  if (first !== undefined && today < first) return `The plan begins on ${shown.weekdayDay(first)}.`;
  const week = weekAt(plan.ramp, today);
  return week === null
    ? 'The plan has come to its end.'
    : `Week ${week.number} of ${weeks.at(-1)?.number} of the plan.`;
}
