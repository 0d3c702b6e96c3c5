import { LIMBS } from '../../../core/index.ts';
import type { Visit } from '../../../electron/contract/contract.ts';
import type { Shown } from '../../units/shown.ts';
import { LIMB_WORDS } from '../../words.ts';

/** What was found at a visit, in one line. */
export function findings(visit: Visit, shown: Shown): string {
  const parts = [
    visit.weightKg === null ? 'not weighed' : shown.amount('weight', visit.weightKg),
    visit.bcs === null ? '' : `condition ${visit.bcs} of 9`,
    visit.muscle === null ? '' : `muscle ${visit.muscle}`,
    lameness(visit),
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function lameness(visit: Visit): string {
  const grades = LIMBS.flatMap((limb) => [
    { limb, gait: 'walk', grade: visit.lamenessWalk[limb] },
    { limb, gait: 'trot', grade: visit.lamenessTrot[limb] },
  ]).filter((entry) => entry.grade !== null);
  if (grades.length === 0) return 'gait not looked at';
  const lame = grades.filter((entry) => (entry.grade ?? 0) > 0);
  if (lame.length === 0) return 'sound';
  return lame
    .map(({ limb, gait, grade }) => `${LIMB_WORDS[limb].toLowerCase()} grade ${grade} at ${gait}`)
    .join(', ');
}
