import type { DogFile } from '../contract/contract.ts';
import { presentLine, presentState } from '../../core/index.ts';
import { presentInput } from '../contract/assessInput.ts';
import { readRecord } from './assessment.ts';
import { readClient } from './clients.ts';
import type { Desk, Handlers } from './context.ts';
import { readRules } from './rules.ts';

/** Everything about one dog. @throws Refusal (not-found). */
export async function readDogFile(desk: Desk, dogId: string): Promise<DogFile> {
  const record = await readRecord(desk.db, dogId);
  const input = presentInput(record, await readRules(desk.db), desk.today());
  const state = presentState(input);
  return {
    ...record,
    client: await readClient(desk.db, record.dog.clientId),
    assessment: state?.assessment ?? null,
    state,
    weighDay: (state ?? presentLine(input.record)).weighDay,
  };
}

export const dogFileHandlers: Handlers<'dogs/file'> = {
  'dogs/file': (desk, { dogId }) => readDogFile(desk, dogId),
};
