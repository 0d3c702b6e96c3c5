import { computed, ref, shallowRef } from 'vue';
import { askedSessions, plannedSessions } from '../../core/index.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import type { SessionInput } from '../../electron/contract/records.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import { askedOf, inputOf, toldSessions } from '../plans/timeline.ts';
import type { SessionResults } from '../plans/useSessionResults.ts';
import type { VisitForm } from './visitForm.ts';

/**
 * The sessions since the last visit, told in the visit form: what is answered stays in the form, and
 * with its draft, until the visit is saved.
 */
export function useVisitSessions(form: VisitForm, file: DogFile) {
  const sessions = plannedSessions(file.plans);
  const day = () => form.visit.day;
  const stored = new Map(file.sessions.map((result) => [result.day, result]));

  /** The last visit before this one; what it asked of earlier sessions is settled. */
  const since = computed(
    () => file.visits.filter((visit) => visit.day < day()).at(-1)?.day ?? '0000-01-01',
  );
  const unasked = file.state?.unasked ?? [];
  const asked = askedSessions(sessions, unasked, file.sessions);
  const before = computed(() => (day() === '' ? [] : toldSessions(asked, file.sessions, day())));
  // The session of the day itself may still be ahead, and its next day is.
  const sinceThen = computed(() =>
    before.value.filter(({ session }) => session.day >= since.value && session.day < day()),
  );
  /** What the plan held from the last visit to this one, as far as it is not wholly told yet. */
  const planned = computed(() =>
    sinceThen.value.filter((told) => askedOf(told, day()) !== null).map(({ session }) => session),
  );

  /** Every result of the dog, those told in the form in place of what is stored. */
  const all = computed<DogFile['sessions']>(() => {
    const merged = new Map(stored);
    for (const told of form.sessions) {
      const base = stored.get(told.day) ?? {
        id: '',
        dogId: file.dog.id,
        createdAt: '',
        author: '',
      };
      // Told now, and so after any plan that is stored.
      merged.set(told.day, { ...base, ...told, updatedAt: '9999-12-31' });
    }
    return [...merged.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
  });

  return {
    planned,
    /** Every session as it stood on its day. */
    everPlanned: sessions,
    /** Sessions of that time that the owner was not asked for: the plan waited. */
    unasked: computed(() =>
      sessions.filter(
        (session) =>
          unasked.includes(session.day) && session.day >= since.value && session.day < day(),
      ),
    ),
    /** Sessions of that time that were told before, e.g. on the plan's page. */
    toldBefore: computed(() => sinceThen.value.length - planned.value.length),
    /** Sessions before the last visit of which nothing was ever told. */
    untoldBefore: computed(
      () =>
        before.value.filter(
          (told) => told.session.day < since.value && askedOf(told, day()) === 'outcome',
        ).length,
    ),
    results: useFormResults(form, all),
    all,
  };
}

export type VisitSessions = ReturnType<typeof useVisitSessions>;

/** Results that are kept in the form, with the same steps as those that are saved at once. */
function useFormResults(form: VisitForm, all: SessionResults['all']): SessionResults {
  const changes = shallowRef<readonly (readonly SessionInput[])[]>([]);
  const count = ref(0);

  async function put(next: readonly SessionInput[]): Promise<boolean> {
    changes.value = [...changes.value, form.sessions.map(inputOf)];
    form.sessions = next.map(inputOf).sort((a, b) => (a.day < b.day ? -1 : 1));
    count.value++;
    return true;
  }
  const without = (days: ReadonlySet<string>) =>
    form.sessions.filter((told) => !days.has(told.day));
  const keepAll = (results: readonly SessionInput[]) =>
    put([...without(new Set(results.map((result) => result.day))), ...results]);

  return {
    all,
    error: shallowRef<AppError | null>(null),
    changes: count,
    canUndo: computed(() => changes.value.length > 0),
    keep: (result) => keepAll([result]),
    keepAll,
    remove: (day) => put(without(new Set([day]))),
    async undo() {
      const last = changes.value.at(-1);
      if (last === undefined) return null;
      const now = new Map(form.sessions.map((told) => [told.day, told]));
      const then = new Map(last.map((told) => [told.day, told]));
      form.sessions = [...last];
      changes.value = changes.value.slice(0, -1);
      count.value++;
      const touched = [...new Set([...now.keys(), ...then.keys()])].sort();
      return touched.find((day) => !sameResult(now.get(day), then.get(day))) ?? null;
    },
  };
}

const sameResult = (a: SessionInput | undefined, b: SessionInput | undefined): boolean =>
  JSON.stringify(a) === JSON.stringify(b);
