import { computed, ref, shallowRef } from 'vue';
import type { DogFile } from '../../electron/contract/contract.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import { weighingFactsOf } from '../../electron/contract/records/facts.ts';
import { changesBetween } from '../../electron/contract/history/historyDiff.ts';
import type { WeighingInput, WeighingRecord } from '../../electron/contract/weighings/weighing.ts';
import { useClient } from '../api/client.ts';
import { useForm, type Form } from '../composables/useForm.ts';
import { usePractice } from '../stores/practice.ts';
import { checkedWeighing, type WeighingForm } from './weighingEntry.ts';

interface AmendForm extends WeighingForm {
  reason: string;
}

/** The sentence of the service, before it is asked. */
function askReason(form: Form<AmendForm>, changed: boolean): void {
  form.clear('reason');
  if (!changed || form.values.reason.trim() !== '') return;
  form.refuse('reason', 'Reason for the amendment is needed: the weighing was saved before.');
}

/** Why the latest save was refused, and whether what is stored was read since. */
function useRefusal(form: Form<AmendForm>) {
  const conflict = shallowRef<AppError | null>(null);
  const error = shallowRef<AppError | null>(null);
  const readSince = ref(false);
  return {
    conflict,
    error,
    readSince,
    meet(met: AppError | null): void {
      const conflicting = met?.kind === 'conflict';
      readSince.value = false;
      conflict.value = conflicting ? met : null;
      error.value = conflicting || met?.fields !== undefined ? null : met;
      if (met !== null && !conflicting) form.takeError(met);
    },
  };
}

/** A saved weighing put right: its form, what it changes, and what to do when it has moved on. */
export function useAmendWeighing(file: () => DogFile, begin: WeighingRecord) {
  const client = useClient();
  const practice = usePractice();
  const form = useForm<AmendForm>({ weighing: weighingFactsOf(begin), reason: '' }, 'amend');
  /** What the form is compared with. */
  const stored = shallowRef(begin);
  const basedOn = ref(begin.revision);
  const { conflict, error, readSince, meet } = useRefusal(form);
  const saving = ref(false);

  const changes = computed(() =>
    // A number that is still missing is a change too; it is named when it is saved.
    changesBetween('weighing', stored.value, form.values.weighing as WeighingInput),
  );

  /** @returns true when it is kept. */
  async function save(): Promise<boolean> {
    if (saving.value) return false;
    askReason(form, changes.value.length > 0);
    const around = { file: file(), today: practice.today, amended: stored.value };
    const weighing = checkedWeighing(form, around);
    if (weighing === null) return false;
    saving.value = true;
    const answer = await client.call('weighings/amend', {
      id: begin.id,
      basedOn: basedOn.value,
      reason: form.values.reason,
      weighing,
    });
    saving.value = false;
    meet(answer.ok ? null : answer.error);
    return answer.ok;
  }

  /** Takes what is stored now as what the form is compared with. @returns true when it could. */
  async function readAgain(): Promise<boolean> {
    const answer = await client.call('dogs/file', { dogId: begin.dogId });
    const now = answer.ok ? answer.value.weighings.find(({ id }) => id === begin.id) : undefined;
    if (now === undefined) {
      meet(answer.ok ? GONE : answer.error);
      return false;
    }
    stored.value = now;
    readSince.value = true;
    return true;
  }

  return {
    form,
    stored,
    changes,
    conflict,
    error,
    saving,
    save,
    differences: computed(() => (readSince.value ? changes.value : null)),
    readAgain,
    /** Saves what was typed on what is stored now. @returns true when it is kept. */
    async saveOver(): Promise<boolean> {
      if (!(await readAgain())) return false;
      basedOn.value = stored.value.revision;
      return save();
    },
  };
}

const GONE: AppError = {
  kind: 'not-found',
  message: 'The weighing is not in the records any more: it was removed since.',
};
