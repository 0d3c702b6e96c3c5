import { source, SOURCES, type RuleInForce, type SourceId } from '../../core/index.ts';

/** What stands in the register where there is no published work. */
const UNPUBLISHED: readonly SourceId[] = [
  'commonPractice',
  'ownDecision',
  'practiceSetting',
  'arithmetic',
];

/** One entry of the register as it is printed, with the rules that lean on it. */
export interface RegisterLine {
  readonly id: SourceId;
  readonly short: string;
  readonly reference: string;
  readonly caveat: string;
  readonly rules: readonly string[];
}

function line(id: SourceId, rules: readonly RuleInForce[]): RegisterLine {
  const { short, reference, caveat = '' } = source(id);
  const leaning = rules.filter(({ sources }) => sources.includes(id));
  return { id, short, reference, caveat, rules: leaning.map(({ name }) => name) };
}

/** Every source by its short form: the published works, and what stands where there is none. */
export function registerLines(rules: readonly RuleInForce[]): {
  readonly published: readonly RegisterLine[];
  readonly unpublished: readonly RegisterLine[];
} {
  const ids = Object.keys(SOURCES) as SourceId[];
  const published = ids
    .filter((id) => !UNPUBLISHED.includes(id))
    .map((id) => line(id, rules))
    .sort((one, other) => one.short.localeCompare(other.short, 'en'));
  return { published, unpublished: UNPUBLISHED.map((id) => line(id, rules)) };
}
