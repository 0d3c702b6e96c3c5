import type { DogInput } from '../../../electron/contract/records.ts';

/** A dog as its form holds it: of no sex until one is chosen, for a preset one would be recorded unseen. */
export type DogEntry = Omit<DogInput, 'clientId' | 'sex'> & { sex: DogInput['sex'] | null };

export const hasSex = (entry: DogEntry): entry is Omit<DogInput, 'clientId'> => entry.sex !== null;
