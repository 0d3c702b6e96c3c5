import type { DogFile } from '../../contract/contract.ts';
import { presentLine, presentState } from '../../../core/index.ts';
import { presentInput } from '../../contract/visits/assessInput.ts';
import { readRecord } from '../visits/assessment.ts';
import { readClient } from './clients.ts';
import type { Context, Handlers } from '../database/context.ts';
import { readRules } from '../practice/rules.ts';

/** Everything about one dog. @throws Refusal (not-found). */
export async function readDogFile(context: Context, dogId: string): Promise<DogFile> {
  const record = await readRecord(context.db, dogId);
  const input = presentInput(record, await readRules(context.db), context.today());
  const state = presentState(input);
  return {
    ...record,
    client: await readClient(context.db, record.dog.clientId),
    assessment: state?.assessment ?? null,
    state,
    weighDay: (state ?? presentLine(input.record)).weighDay,
  };
}

export const dogFileHandlers: Handlers<'dogs/file'> = {
  'dogs/file': (context, { dogId }) => readDogFile(context, dogId),
};
