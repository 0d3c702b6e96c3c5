import { blankClient, blankDog } from '../../../electron/contract/records/forms.ts';
import type { DogFile, Visit } from '../../../electron/contract/contract.ts';

/** What every stored record carries beside its facts. */
export const stored = { id: 'd', createdAt: '', updatedAt: '', revision: 1 };

/** The file of a grown dog with these visits and nothing else. */
export function dogFile(visits: readonly Visit[]): DogFile {
  return {
    dog: {
      ...blankDog('female'),
      ...stored,
      archivedAt: null,
      clientId: 'c',
      name: 'Bramble',
      birthDay: '2021-05-01',
    },
    client: { ...blankClient(), ...stored },
    visits: [...visits],
    plans: [],
    foodDecisions: [],
    sessions: [],
    weighings: [],
    assessment: null,
    state: null,
    weighDay: null,
  };
}
