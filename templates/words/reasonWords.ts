import { RED_FLAGS } from '../../core/readiness/signs.ts';

/**
 * Texts for what core names by a code or in English, e.g. reasons with the gaps that their `params`
 * fill. Where a language has none, core's own English is printed.
 */
export type ReasonWords = Readonly<Record<string, string>>;

const AGREED = ['disease-joints', 'disease-spine', 'disease-heart', 'heat-illness'];
const CLEARED = [
  'review-not-cleared',
  'review-lameness-walk',
  'review-lameness-trot',
  'review-sign',
  'review-vet-first',
  'review-stop-sign',
  'review-stiff-48',
];

/**
 * What the vet has to say to a reason: that it agrees, or that it looked at the dog and clears it.
 * Empty where the reason itself sends the owner to the vet.
 */
export function vetChanges(agrees: string, clears: string): ReasonWords {
  const signs = RED_FLAGS.map(({ id, emergency }) => [`sign-${id}`, emergency ? '' : clears]);
  return Object.fromEntries([
    ...AGREED.map((code) => [code, agrees]),
    ...CLEARED.map((code) => [code, clears]),
    ...signs,
    ['nutrient-floor', ''],
  ]);
}
