import type { DogFilter } from '../../../electron/contract/dogs/list.ts';
import {
  DUE_AHEAD_DAYS,
  DUE_PAST_DAYS,
  type DueLine,
  type DueReason,
} from '../../../electron/contract/dogs/due.ts';
import { addDays } from '../../../core/index.ts';
import type { Played } from '../play.ts';
import { weightText, type Told } from '../told.ts';

/** What the desk says: the dog's own row, the due list, the weights off course and the filters. */
export async function readDesk(played: Played): Promise<Map<string, Told>> {
  const { desk, file, practice } = played;
  const isOwn = ({ dogId }: { readonly dogId: string }): boolean => dogId === file.dog.id;
  const row = (await desk.ok('dogs/list', { query: '' })).find(({ id }) => id === file.dog.id)!;
  const off = (await desk.ok('dogs/offCourse', {})).find(isOwn);
  return new Map<string, Told>([
    [
      'the row of the desk',
      { weight: weightText(row.lastWeightKg!, practice), condition: row.lastBcs },
    ],
    ...dueLists(played, (await desk.ok('dogs/due', {})).filter(isOwn)),
    [
      'the list of weights off course',
      {
        offCourse: off?.reason.code ?? null,
        ...(off === undefined ? {} : { weight: weightText(off.weightKg, practice) }),
      },
    ],
    ...(await filters(played)),
  ]);
}

/** What the due list says, or leaves out although its day is near. */
function dueLists({ file }: Played, lines: readonly DueLine[]): [string, Told][] {
  const { day, weighDay, planEndsOn, consent, programme } = file.state!;
  const listed = (reason: DueReason, due: string | null): string | null | undefined => {
    const line = lines.find((entry) => entry.reason === reason);
    if (line !== undefined) return line.day;
    const isNear =
      due !== null &&
      due <= addDays(day, DUE_AHEAD_DAYS[reason]) &&
      due >= addDays(day, -DUE_PAST_DAYS);
    // What is far off, or long overdue, is on no list.
    return isNear ? undefined : due;
  };
  const held = lines.some(({ reason }) => reason === 'plan on hold');
  const ending = lines.find(({ reason }) => reason === 'plan ends');
  // The list names no kind of plan.
  const going = programme.kind === 'walking' ? ('walking' as const) : ('running' as const);
  const lastOuting = listed(held ? 'plan on hold' : 'plan ends', planEndsOn);
  return [
    ['the weigh-in on the due list', { nextWeighIn: listed('weigh', weighDay) }],
    ['the consent on the due list', { consentEnds: listed('consent ends', consent.endsOn) }],
    [
      'the plan on the due list',
      {
        lastOuting,
        ...(held ? { programme: 'held' as const } : {}),
        ...(ending === undefined
          ? {}
          : { programme: ending.day < day ? ('finished' as const) : going }),
      },
    ],
  ];
}

async function filters({ desk, file }: Played): Promise<[string, Told][]> {
  const holds = async (filter: DogFilter): Promise<boolean> =>
    (await desk.ok('dogs/list', { query: '', filters: [filter] })).some(
      ({ id }) => id === file.dog.id,
    );
  const { state } = file;
  const { day } = state!;
  const weighDay = state!.weighDay!;
  const isDue = weighDay <= day && weighDay >= addDays(day, -DUE_PAST_DAYS);
  return [
    ['the filter "gaining"', { gaining: await holds('gaining') }],
    ['the filter "consent missing"', { consent: !(await holds('consent missing')) }],
    [
      'the filter "due for follow-up"',
      (await holds('due for follow-up')) === isDue ? {} : { nextWeighIn: undefined },
    ],
    ['the filter "plan ended"', (await holds('plan ended')) ? { programme: 'finished' } : {}],
    ['the filter "stopped"', (await holds('stopped')) ? { programme: 'held' } : {}],
  ];
}
