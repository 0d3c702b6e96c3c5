import type { FoodVerdict } from '../../core/index.ts';

/** The verdict on the food in a few words. */
export const VERDICT_WORDS: Record<FoodVerdict, string> = {
  start: 'First ration',
  change: 'A new ration',
  keep: 'Keep the ration',
  wait: 'No change yet',
  refer: 'Vet first',
};
