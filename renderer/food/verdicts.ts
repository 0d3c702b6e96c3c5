import type { Figure, FoodVerdict } from '../../core/index.ts';
import type { FoodDecision } from '../../electron/contract/contract.ts';

/** The verdict on the food in a few words. */
export const VERDICT_WORDS: Record<FoodVerdict, string> = {
  start: 'First ration',
  change: 'A new ration',
  keep: 'Keep the ration',
  wait: 'No change yet',
  refer: 'Vet first',
};

/** What was decided on a proposal, behind the amount. */
export const DECIDED_WORDS: Readonly<Record<FoodDecision['decision'], string>> = {
  accepted: 'as proposed',
  edited: 'edited',
  declined: 'proposal declined',
};

/** A growing dog's energy is no maintenance: most of what lies above it goes into growth. */
export const needWord = ({ id }: Pick<Figure, 'id'>): string =>
  id === 'growthEnergy' ? 'Need while growing' : 'Maintenance';
