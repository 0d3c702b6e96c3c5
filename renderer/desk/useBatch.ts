import { computed, ref, shallowRef } from 'vue';
import type { BatchPrinted } from '../../electron/contract/calls/handouts.ts';
import type { DogLine } from '../../electron/contract/contract.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import type { HandoutKind, Practice } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { canBeTriedAgain, savingSentence, type Saving } from '../api/saveFile.ts';
import { plainCopy } from '../composables/plainCopy.ts';
import { useForm } from '../composables/useForm.ts';
import { useWork } from '../composables/useWork.ts';
import { usePractice } from '../stores/practice.ts';
import { counted } from '../words.ts';

interface Choice extends Pick<Practice, 'paper' | 'language'> {
  dogIds: string[];
  /** The sheets the practice chose for each dog's last visit, or `kinds` for all of them. */
  sheets: 'of the visit' | 'the same';
  kinds: HandoutKind[];
}

const NOTHING: Choice = {
  dogIds: [],
  sheets: 'of the visit',
  kinds: [],
  paper: 'A4',
  language: 'en',
};

/** What is chosen: the dogs of a narrowed list, else whoever was seen today. */
function useChoice() {
  const practice = usePractice();
  const form = useForm<Choice>(NOTHING, 'batch');

  function begin(dogs: readonly DogLine[], narrowed: boolean): void {
    const { today } = practice;
    const meant = narrowed ? dogs : dogs.filter(({ lastVisitDay }) => lastVisitDay === today);
    form.replace({
      dogIds: meant.map(({ id }) => id),
      sheets: 'of the visit',
      kinds: practice.practice?.followUpSheets ?? [],
      paper: practice.practice?.paper ?? 'A4',
      language: practice.practice?.language ?? 'en',
    });
  }
  return { form, begin };
}

/** For example "3 sheets, 5 pages." */
function printedSentence({ dogs }: BatchPrinted): string {
  const sheets = dogs.flatMap((dog) => dog.sheets).filter(({ problem }) => problem === null);
  const pages = sheets.reduce((sum, sheet) => sum + sheet.pages, 0);
  return `${counted(sheets.length, 'sheet')}, ${counted(pages, 'page')}.`;
}

/** Sheets for several dogs: what is chosen, the printing under way, and what came of it. */
export function useBatch() {
  const client = useClient();
  const work = useWork();
  const { form, begin } = useChoice();
  const printed = shallowRef<BatchPrinted | null>(null);
  const error = shallowRef<AppError | null>(null);
  const said = ref('');
  /** What became of the archive; null before there is one. */
  const saving = ref<Saving | null>(null);

  function clear(): void {
    printed.value = null;
    error.value = null;
    said.value = '';
    saving.value = null;
  }

  async function print(): Promise<void> {
    clear();
    form.attempt();
    const { sheets, kinds: same, ...choice } = plainCopy(form.values);
    const kinds = sheets === 'the same' ? same : null;
    if (choice.dogIds.length === 0 || kinds?.length === 0) return;
    const answer = await work.run((workId) =>
      client.call('handouts/batch', { ...choice, kinds, workId }),
    );
    if (answer.ok) {
      printed.value = answer.value;
      await save();
    } else if (answer.error.kind === 'cancelled') said.value = 'Stopped. Nothing was printed.';
    else error.value = answer.error;
  }

  async function save(): Promise<void> {
    if (printed.value === null) return;
    const { token, fileName } = printed.value;
    if (token === null) {
      said.value = 'None of these sheets could be printed.';
      return;
    }
    saving.value = await client.files.saveProduced(token, fileName, 'bundle');
    said.value = `${printedSentence(printed.value)} ${savingSentence(fileName, saving.value)}`;
  }

  return {
    form,
    work,
    printed,
    error,
    said,
    begin(dogs: readonly DogLine[], narrowed: boolean): void {
      clear();
      begin(dogs, narrowed);
    },
    print,
    save,
    again: clear,
    unsaved: computed(() => saving.value !== null && canBeTriedAgain(saving.value)),
  };
}
