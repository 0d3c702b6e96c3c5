import { exerciseOf, LIMBS, redFlagLabel } from '../../../core/index.ts';
import type { Visit } from '../../../electron/contract/contract.ts';
import { toldAnew, toldText, type ToldPlace } from '../../../electron/contract/records/told.ts';
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

const BETWEEN = ' · ';

/**
 * Signs, history, findings, feeding and exercises, a line each: what was noted at the visit, of what
 * is kept from visit to visit only what is new against the visit before.
 */
export function toldLines(visit: Visit, before: Visit | null, shown: Shown): string[] {
  const facts = (place: ToldPlace) =>
    toldAnew(visit, before, place)
      .map(({ label, parts }) => `${label}: ${toldText(parts, (day) => shown.day(day))}`)
      .join(BETWEEN);
  return [signs(visit), facts('history'), facts('found'), facts('feeding'), chosen(visit, before)];
}

const signs = ({ signs: noted }: Visit): string =>
  noted.length === 0 ? '' : `Signs: ${noted.map((id) => redFlagLabel(id) ?? id).join(', ')}`;

function chosen({ exercises }: Visit, before: Visit | null): string {
  const names = (exercises ?? []).map((id) => exerciseOf(id)?.name ?? id).join(', ');
  const isNew = (exercises ?? []).join() !== (before?.exercises ?? []).join();
  return isNew && names !== '' ? `Strength exercises: ${names}` : '';
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
