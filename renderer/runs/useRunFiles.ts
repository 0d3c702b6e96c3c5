import { ref, shallowRef, type Ref, type ShallowRef } from 'vue';
import type { OutingRead, RowRead } from '../../electron/contract/calls/runs.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import type { TakenFile } from '../../electron/contract/filePurposes.ts';
import { useClient } from '../api/client.ts';

export interface RunFiles {
  readonly busy: Ref<boolean>;
  /** Why files were not read, a sentence each. */
  readonly problems: ShallowRef<readonly string[]>;
  readonly outings: ShallowRef<readonly OutingRead[]>;
  readonly rows: ShallowRef<readonly RowRead[]>;
  choose(): Promise<void>;
  drop(files: readonly File[]): Promise<void>;
  /** Done with the outings of that day. */
  leave(day: string): void;
  leaveRows(): void;
}

/** Files at once, far more than the outings between two visits. */
const MOST_FILES = 40;

/** Tracks and tables that came back, read one after the other and waiting to be looked at. */
export function useRunFiles(dogId: string): RunFiles {
  const client = useClient();
  const busy = ref(false);
  const problems = shallowRef<readonly string[]>([]);
  const outings = shallowRef<readonly OutingRead[]>([]);
  const rows = shallowRef<readonly RowRead[]>([]);

  async function readOne(name: string, taken: Answer<TakenFile | null>): Promise<void> {
    if (!taken.ok) problems.value = [...problems.value, `${name}: ${taken.error.message}`];
    if (!taken.ok || taken.value === null) return;
    const { token } = taken.value;
    const answer = await client.call('runs/read', { dogId, token });
    if (!answer.ok) {
      problems.value = [...problems.value, `${taken.value.name}: ${answer.error.message}`];
      return;
    }
    outings.value = [...outings.value, ...answer.value.outings.filter(isNew)];
    if (answer.value.rows.length > 0) rows.value = answer.value.rows;
  }
  /** The same file twice is one outing. */
  const isNew = ({ day, startsAt, outing }: OutingRead): boolean =>
    !outings.value.some(
      (each) =>
        each.day === day && each.startsAt === startsAt && each.outing.seconds === outing.seconds,
    );

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
    problems,
    outings,
    rows,
    choose: () => each([{ name: 'The file', take: () => client.files.chooseFile('run') }]),
    drop: (files) =>
      each(
        files.map((file) => ({ name: file.name, take: () => client.files.sendFile(file, 'run') })),
      ),
    leave(day) {
      outings.value = outings.value.filter((outing) => outing.day !== day);
    },
    leaveRows() {
      rows.value = [];
    },
  };
}
