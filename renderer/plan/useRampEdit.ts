import { computed, reactive, ref, type ComputedRef, type Ref } from 'vue';
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

export interface RampEditing {
  readonly edits: Ref<readonly RampEdit[]>;
  /** The plan with the edits in it. */
  readonly ramp: ComputedRef<Ramp>;
  /** Rules the edited plan breaks, and what is worth knowing about it. */
  readonly breaches: ComputedRef<readonly Breach[]>;
  /** Reasons as typed, by `breachKey`. */
  readonly reasons: Record<string, string>;
  readonly kept: ComputedRef<readonly KeptBreach[]>;
  /** Breaches that still need a reason. */
  readonly open: ComputedRef<readonly Breach[]>;
  /** Why the last edit was not taken; empty when it was. */
  readonly problem: Ref<string>;
  /** @returns false when the edit cannot be made. */
  add(edit: RampEdit): boolean;
  undo(): void;
}

/** Edits of a plan by hand, replayed from the kept plan and checked against its rules each time. */
export function useRampEdit(plan: Ramp, keptBefore: readonly Breach[]): RampEditing {
  const edits = ref<readonly RampEdit[]>([]);
  const problem = ref('');
  const reasons = reactive<Record<string, string>>(
    Object.fromEntries(keptBefore.map((breach) => [breachKey(breach), breach.keptBecause ?? ''])),
  );
  const ramp = computed(() => (edits.value.length === 0 ? plan : editRamp(plan, edits.value)));
  const broken = computed(() => checkRamp(ramp.value));
  const kept = computed(() =>
    broken.value
      .filter((breach) => (reasons[breachKey(breach)] ?? '').trim() !== '')
      .map(({ code, weekIndex, day }) => ({
        code,
        weekIndex,
        day,
        reason: reasons[breachKey({ code, weekIndex, day, reason: '' })]!,
      })),
  );
  const breaches = computed(() => checkRamp(ramp.value, kept.value));
  return {
    edits,
    ramp,
    breaches,
    reasons,
    kept,
    open: computed(() =>
      breaches.value.filter(
        ({ gravity, keptBecause }) => gravity === 'breach' && keptBecause === null,
      ),
    ),
    problem,
    add(edit) {
      try {
        editRamp(plan, [...edits.value, edit]);
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        problem.value = error.message;
        return false;
      }
      problem.value = '';
      edits.value = [...edits.value, edit];
      return true;
    },
    undo() {
      problem.value = '';
      edits.value = edits.value.slice(0, -1);
    },
  };
}
