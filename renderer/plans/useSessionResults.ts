import { computed, ref, shallowRef, type ComputedRef, type Ref, type ShallowRef } from 'vue';
import type { AppError } from '../../electron/contract/errors.ts';
import type { SessionInput } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { inputOf } from './timeline.ts';

/** A told result with the initials of who took it down. */
export type SignedResult = SessionInput & { readonly updatedAt: string } & {
  readonly author: string;
};

export interface SessionResults {
  /** What was told of each session, oldest first. */
  readonly all: ComputedRef<readonly SignedResult[]>;
  readonly error: ShallowRef<AppError | null>;
  /** True while there is a change of this page to take back. */
  readonly canUndo: ComputedRef<boolean>;
  /** Counts up with every change that was kept. */
  readonly changes: Ref<number>;
  /** `reason`: why an earlier result is replaced. */
  keep(result: SessionInput, reason?: string): Promise<boolean>;
  /** Keeps several; `undo` takes them back together. */
  keepAll(results: readonly SessionInput[]): Promise<boolean>;
  /** Takes a result away; `undo` brings it back. */
  remove(day: string): Promise<boolean>;
  /** Takes the last change back. @returns its first day, or null when there is none. */
  undo(): Promise<string | null>;
}

/** What stood there before, by day. */
type Change = readonly { readonly day: string; readonly before: SessionInput | null }[];

/** Session results of one dog: each change is kept at once, and can be taken back in turn. */
export function useSessionResults(dogId: string, kept: readonly SignedResult[]): SessionResults {
  const client = useClient();
  const byDay = shallowRef(new Map(kept.map((result) => [result.day, result])));
  const changes = shallowRef<readonly Change[]>([]);
  const count = ref(0);
  const error = shallowRef<AppError | null>(null);

  async function put(day: string, result: SessionInput | null, reason = ''): Promise<boolean> {
    const answer =
      result === null
        ? await client.call('sessions/drop', { dogId, day })
        : await client.call('sessions/save', { dogId, session: inputOf(result), reason });
    error.value = answer.ok ? null : answer.error;
    if (!answer.ok) return false;
    const next = new Map(byDay.value);
    if (answer.value === null) next.delete(day);
    else next.set(day, answer.value);
    byDay.value = next;
    count.value++;
    return true;
  }

  /** Puts one after the other; what was put before one is refused can be taken back too. */
  async function change(
    puts: readonly [string, SessionInput | null][],
    reason = '',
  ): Promise<boolean> {
    const done: { day: string; before: SessionInput | null }[] = [];
    for (const [day, result] of puts) {
      const before = byDay.value.get(day) ?? null;
      if (!(await put(day, result, reason))) break;
      done.push({ day, before });
    }
    if (done.length > 0) changes.value = [...changes.value, done];
    return done.length === puts.length;
  }

  return {
    all: computed(() => [...byDay.value.values()].sort((a, b) => (a.day < b.day ? -1 : 1))),
    error,
    changes: count,
    canUndo: computed(() => changes.value.length > 0),
    keep: (result, reason) => change([[result.day, result]], reason),
    keepAll: (results) => change(results.map((result) => [result.day, result])),
    remove: (day) => change([[day, null]]),
    async undo() {
      const last = changes.value.at(-1);
      if (last === undefined) return null;
      for (const { day, before } of last) if (!(await put(day, before, 'Taken back.'))) return null;
      changes.value = changes.value.slice(0, -1);
      return last[0]?.day ?? null;
    },
  };
}
