import type { DogFile } from '../contract/contract.ts';
import { assessRecord } from './assessment.ts';
import { readClient } from './clients.ts';
import type { Desk, Handlers } from './context.ts';
import { readDog } from './dogs.ts';
import { readFoodDecisions } from './foodDecisions.ts';
import { readPlans } from './plans.ts';
import { readVisits } from './visitRows.ts';

/** Everything about one dog. @throws Refusal (not-found). */
export async function readDogFile(desk: Desk, dogId: string): Promise<DogFile> {
  const dog = await readDog(desk.db, dogId);
  const client = await readClient(desk.db, dog.clientId);
  const visits = await readVisits(desk.db, dogId);
  const plans = await readPlans(desk.db, dogId);
  const foodDecisions = await readFoodDecisions(desk.db, dogId);
  return {
    dog,
    client,
    visits,
    plans,
    foodDecisions,
    assessment: assessRecord(dog, visits, foodDecisions, desk.today()),
  };
}

export const dogFileHandlers: Handlers<'dogs/file'> = {
  'dogs/file': (desk, { dogId }) => readDogFile(desk, dogId),
};
