import { from, OWN } from '../origin.ts';
import { valuesOf, ruleTable } from './rule.ts';

const froude = {
  unit: '',
  ...from('C', 'M', 'froudeGaits'),
} as const;

/** Every number behind gait and measurement. */
export const GAIT_RULES = ruleTable({
  froudeTrot: {
    name: 'Walk becomes trot near a Froude number of',
    value: 0.5,
    range: [0.2, 1],
    ...froude,
    note: 'Speed alone never identifies a gait.',
  },
  froudeCanterLow: {
    name: 'Trot becomes canter: low end of the Froude number',
    value: 2,
    range: [1, 3],
    ...froude,
    note: 'Speed alone never identifies a gait.',
  },
  froudeCanterHigh: {
    name: 'Trot becomes canter: high end of the Froude number',
    value: 3,
    range: [2, 5],
    ...froude,
    note: 'Speed alone never identifies a gait.',
  },
  jointErrorDegrees: {
    name: 'Joint angle: changes within error, up to',
    value: 6,
    unit: '°',
    range: [2, 10],
    ...from('A', 'S', 'jaegger2002'),
    note: 'The repeat error is 1–6 degrees.',
  },
  girthErrorCm: {
    name: 'Thigh girth: changes within error, under',
    value: 1,
    unit: 'cm',
    range: [0.5, 3],
    ...from('A', 'S', 'bascunan2016'),
    note: 'Same site, same stance, same clip.',
  },
  standingErrorPercent: {
    name: 'Standing weight of a limb: changes within error, up to',
    value: 5,
    unit: '% of the reading',
    range: [1, 20],
    ...OWN,
    note: 'No repeat error was found; a dog shifts its weight. Measure three times.',
  },
  hindDifferencePercent: {
    name: 'Standing weight: hind left-right difference worth a flag, above',
    value: 8.7,
    unit: '% of body weight',
    range: [3, 15],
    ...from('A', 'C', 'hyytiainen2012'),
    note: 'A normal result does not rule lameness out.',
  },
  pairPhaseTolerance: {
    name: 'Footfalls of a pair count as evenly spaced within',
    value: 10,
    unit: '% of the stride',
    range: [5, 20],
    ...OWN,
    note: 'Beyond this the gait is called asymmetrical (canter, gallop).',
  },
});

type GaitRuleId = keyof typeof GAIT_RULES;
export type GaitRuleValues = Readonly<Record<GaitRuleId, number>>;

/** The published values, with `changes` put over them. */
export function gaitRuleValues(
  changes: Readonly<Record<string, number | undefined>> = {},
): GaitRuleValues {
  return valuesOf(GAIT_RULES, changes);
}
