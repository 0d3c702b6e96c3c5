import type { DogFile } from '../contract/contract.ts';
import { assessRecord, readRecord } from './assessment.ts';
import { readClient } from './clients.ts';
import type { Desk, Handlers } from './context.ts';

/** Everything about one dog. @throws Refusal (not-found). */
export async function readDogFile(desk: Desk, dogId: string): Promise<DogFile> {
  const record = await readRecord(desk.db, dogId);
  return {
    ...record,
    client: await readClient(desk.db, record.dog.clientId),
    assessment: await assessRecord(desk.db, record, desk.today()),
  };
}

export const dogFileHandlers: Handlers<'dogs/file'> = {
  'dogs/file': (desk, { dogId }) => readDogFile(desk, dogId),
};
