import { computed, ref, shallowRef } from 'vue';
import type { OutingRead, RowRead } from '../../electron/contract/calls/runs.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import type { TakenFile } from '../../electron/contract/files/purposes.ts';
import { useClient } from '../api/client.ts';

/** A file that may be kept once one of its outings is taken over. */
interface Recording {
  readonly token: string;
  readonly name: string;
  readonly days: readonly string[];
}

/** Files at once, far more than the outings between two visits. */
const MOST_FILES = 40;

/** The same file twice is one outing. */
const isAmong = (outings: readonly OutingRead[], { day, startsAt, outing }: OutingRead): boolean =>
  outings.some(
    (each) =>
      each.day === day && each.startsAt === startsAt && each.outing.seconds === outing.seconds,
  );

const NONE = { kept: [], failed: [] } as const;

/** The recordings that may be kept, each until its outings are taken over or left out. */
function useRecordings(dogId: string) {
  const client = useClient();
  const list = shallowRef<readonly Recording[]>([]);

  async function letGo(unused: readonly Recording[]): Promise<void> {
    list.value = list.value.filter((recording) => !unused.includes(recording));
    for (const { token } of unused) await client.call('runs/leave', { dogId, token });
  }

  return {
    any: computed(() => list.value.length > 0),
    async add(token: string, name: string, outings: readonly OutingRead[]): Promise<void> {
      const days = outings.map(({ day }) => day);
      const recording = { token, name, days };
      list.value = [...list.value, recording];
      // Its outings are here already, from the same file.
      if (days.length === 0) await letGo([recording]);
    },
    async keepThoseOf(day: string) {
      const [kept, failed]: [string[], string[]] = [[], []];
      const own = list.value.filter(({ days }) => days.includes(day));
      list.value = list.value.filter((recording) => !own.includes(recording));
      for (const { token, name } of own) {
        const answer = await client.call('runs/keep', { dogId, token });
        if (answer.ok) kept.push(name);
        else failed.push(`${name}: ${answer.error.message}`);
      }
      return { kept, failed };
    },
    /** Lets go of those of which no outing is still to be looked at. */
    async leaveOthers(open: readonly OutingRead[]): Promise<void> {
      const days = new Set(open.map(({ day }) => day));
      await letGo(list.value.filter((recording) => !recording.days.some((day) => days.has(day))));
    },
  };
}

/** Tracks and tables that came back, read one after the other and waiting to be looked at. */
export function useRunFiles(dogId: string) {
  const client = useClient();
  const busy = ref(false);
  const problems = shallowRef<readonly string[]>([]);
  const outings = shallowRef<readonly OutingRead[]>([]);
  const rows = shallowRef<readonly RowRead[]>([]);
  const recordings = useRecordings(dogId);

  async function readOne(name: string, taken: Answer<TakenFile | null>): Promise<void> {
    if (!taken.ok) problems.value = [...problems.value, `${name}: ${taken.error.message}`];
    if (!taken.ok || taken.value === null) return;
    const { token } = taken.value;
    const answer = await client.call('runs/read', { dogId, token });
    if (!answer.ok) {
      problems.value = [...problems.value, `${taken.value.name}: ${answer.error.message}`];
      return;
    }
    const { name: named, waits } = answer.value;
    const fresh = answer.value.outings.filter((outing) => !isAmong(outings.value, outing));
    outings.value = [...outings.value, ...fresh];
    if (waits) await recordings.add(token, named, fresh);
    if (answer.value.rows.length > 0) rows.value = answer.value.rows;
  }
  async function each(
    files: readonly { name: string; take: () => Promise<Answer<TakenFile | null>> }[],
  ): Promise<void> {
    if (busy.value) return;
    busy.value = true;
    problems.value =
      files.length > MOST_FILES ? [`Only the first ${MOST_FILES} files were read.`] : [];
    for (const { name, take } of files.slice(0, MOST_FILES)) await readOne(name, await take());
    busy.value = false;
  }

  return {
    busy,
    /** Why files were not read, a sentence each. */
    problems,
    outings,
    rows,
    choose: () => each([{ name: 'The file', take: () => client.files.chooseFile('run') }]),
    drop: (files: readonly File[]) =>
      each(
        files.map((file) => ({ name: file.name, take: () => client.files.sendFile(file, 'run') })),
      ),
    /** The owner's record asks to keep the recordings of those that were read. */
    keepsRecordings: recordings.any,
    /**
     * Done with the outings of that day; `taken` where they were taken over.
     * @returns the names of the recordings that are kept for it
     */
    async leave(day: string, taken: boolean): Promise<readonly string[]> {
      outings.value = outings.value.filter((outing) => outing.day !== day);
      const { kept, failed } = taken ? await recordings.keepThoseOf(day) : NONE;
      problems.value = [...problems.value, ...failed];
      await recordings.leaveOthers(outings.value);
      return kept;
    },
    leaveRows(): void {
      rows.value = [];
    },
  };
}
