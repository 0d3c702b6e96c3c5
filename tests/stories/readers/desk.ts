import { DUE_AHEAD_DAYS, DUE_PAST_DAYS } from '../../../electron/contract/due.ts';
import { addDays } from '../../../core/index.ts';
import type { Played } from '../play.ts';
import { weightText, type Told } from '../told.ts';

/** What the rows of the desk say: the dog's own row, the due list and the filters. */
export async function readDesk({ desk, file, practice }: Played): Promise<Map<string, Told>> {
  const { id } = file.dog;
  const day = file.state!.day;
  const row = (await desk.ok('dogs/list', { query: '' })).find((line) => line.id === id)!;
  const said = new Map<string, Told>();
  said.set('the row of the desk', { weight: weightText(row.lastWeightKg!, practice) });
  const lines = (await desk.ok('dogs/due', {})).filter(({ dogId }) => dogId === id);
  const weigh = lines.find(({ reason }) => reason === 'weigh');
  // A weigh-in far off, or long overdue, is on no list.
  if (weigh !== undefined) said.set('the due list', { nextWeighIn: weigh.day });
  else if (isListed(file.state!.due.find(({ what }) => what === 'weigh')?.day, day)) {
    said.set('the due list', { nextWeighIn: undefined });
  }
  const ended = await desk.ok('dogs/list', { query: '', filters: ['plan ended'] });
  if (ended.some((line) => line.id === id)) {
    said.set('the filter "plan ended"', { nextOuting: null });
  }
  const ending = lines.find(({ reason }) => reason === 'plan ends');
  if (ending !== undefined && ending.day > day) {
    said.set('the end of a plan on the due list', { programme: 'running' });
  }
  return said;
}

const isListed = (due: string | undefined, day: string): boolean =>
  due !== undefined &&
  due <= addDays(day, DUE_AHEAD_DAYS.weigh) &&
  due >= addDays(day, -DUE_PAST_DAYS);
