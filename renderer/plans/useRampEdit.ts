import { computed, ref } from 'vue';
import {
  checkRamp,
  editRamp,
  type Breach,
  type KeptBreach,
  type Ramp,
  type RampEdit,
} from '../../core/index.ts';

/** What names a breach while the plan is being edited. */
export const breachKey = ({ code, weekIndex, day }: KeptBreach | Breach): string =>
  `${code}-${weekIndex}-${day ?? 'week'}`;

/** What is typed while a plan is edited; plain data, so that it can be kept as a draft. */
export interface RampEntry {
  edits: RampEdit[];
  /** Reasons for keeping a breach as typed, by `breachKey`. */
  reasons: { readonly key: string; readonly text: string }[];
}

/** No edit yet; the reasons given before stand. */
export const blankRampEntry = (keptBefore: readonly Breach[]): RampEntry => ({
  edits: [],
  reasons: keptBefore.map((breach) => ({
    key: breachKey(breach),
    text: breach.keptBecause ?? '',
  })),
});

/** How many edits, from the first on, can be made in `plan`. */
export function fittingEdits(plan: Ramp, edits: readonly RampEdit[]): number {
  for (let count = edits.length; count > 0; count -= 1) {
    try {
      editRamp(plan, edits.slice(0, count));
      return count;
    } catch {
      // One of them names what the plan does not have; those before it may still be made.
    }
  }
  return 0;
}

/** The rules that are broken with a written reason, as they are sent. */
export function keptBreaches(
  broken: readonly Breach[],
  reasons: RampEntry['reasons'],
): readonly KeptBreach[] {
  const written = new Map(reasons.map(({ key, text }) => [key, text]));
  return broken.flatMap((breach) => {
    const { code, weekIndex, day } = breach;
    const reason = written.get(breachKey(breach)) ?? '';
    return reason.trim() === '' ? [] : [{ code, weekIndex, day, reason }];
  });
}

/**
 * Edits of a plan by hand, replayed from the kept plan and checked against its rules each time.
 * `entry` is reactive, and written to.
 */
export function useRampEdit(plan: Ramp, entry: RampEntry) {
  /** Why the last edit was not taken; empty when it was. */
  const problem = ref('');
  /** Reasons as typed, by `breachKey`. */
  const reasons = computed<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(entry.reasons.map(({ key, text }) => [key, text])),
  );
  /** The plan with the edits in it. */
  const ramp = computed(() => (entry.edits.length === 0 ? plan : editRamp(plan, entry.edits)));
  const broken = computed(() => checkRamp(ramp.value));
  const kept = computed(() => keptBreaches(broken.value, entry.reasons));
  /** Rules the edited plan breaks, and what is worth knowing about it. */
  const breaches = computed(() => checkRamp(ramp.value, kept.value));
  return {
    ramp,
    breaches,
    reasons,
    kept,
    /** Breaches that still need a reason. */
    open: computed(() =>
      breaches.value.filter(
        ({ gravity, keptBecause }) => gravity === 'breach' && keptBecause === null,
      ),
    ),
    problem,
    /** @returns false when the edit cannot be made. */
    add(edit: RampEdit): boolean {
      try {
        editRamp(plan, [...entry.edits, edit]);
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        problem.value = error.message;
        return false;
      }
      problem.value = '';
      entry.edits = [...entry.edits, edit];
      return true;
    },
    undo(): void {
      problem.value = '';
      entry.edits = entry.edits.slice(0, -1);
    },
    /** Takes down why a breach is kept. */
    giveReason(key: string, text: string): void {
      entry.reasons = [...entry.reasons.filter((given) => given.key !== key), { key, text }];
    },
  };
}

export type RampEditing = ReturnType<typeof useRampEdit>;
