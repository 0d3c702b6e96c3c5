import { computed, ref, shallowRef } from 'vue';
import type { BatchPrinted } from '../../electron/contract/calls/handouts.ts';
import type { DogLine } from '../../electron/contract/contract.ts';
import type { Answer, AppError } from '../../electron/contract/errors.ts';
import type { HandoutKind, Practice } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { canBeTriedAgain, savingSentence, type Saving } from '../api/saveFile.ts';
import { plainCopy } from '../composables/plainCopy.ts';
import { useForm } from '../composables/useForm.ts';
import { useWork } from '../composables/useWork.ts';
import { printPdfs } from '../handouts/printPdf.ts';
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

/** What was made, given to the print window or saved as the archive it is, and what is said of that. */
function useHandingOut(form: ReturnType<typeof useChoice>['form']) {
  const client = useClient();
  const printed = shallowRef<BatchPrinted | null>(null);
  const error = shallowRef<AppError | null>(null);
  const said = ref('');
  /** True while the pages are made ready for the print window. */
  const printing = ref(false);
  /** What became of the archive; null before it was handed over. */
  const saving = ref<Saving | null>(null);

  function clear(): void {
    printed.value = null;
    error.value = null;
    said.value = '';
    saving.value = null;
  }

  /** Each dog's sheets as one file, numbered through. */
  async function stacks({ dogs }: BatchPrinted): Promise<Answer<string[]>> {
    const { paper, language } = plainCopy(form.values);
    const files: string[] = [];
    for (const { dogId, sheets } of dogs) {
      const kinds = sheets.filter(({ problem }) => problem === null).map(({ kind }) => kind);
      if (kinds.length === 0) continue;
      const stack = await client.call('handouts/bundle', { dogId, kinds, paper, language });
      if (!stack.ok) return stack;
      files.push(stack.value.base64);
    }
    return { ok: true, value: files };
  }

  /** Opens the print window with all of them; where there is none, the archive is handed over. */
  async function print(): Promise<void> {
    if (printed.value === null || printing.value) return;
    printing.value = true;
    said.value = 'Making the pages ready for the print window…';
    const files = await stacks(printed.value);
    error.value = files.ok ? null : files.error;
    const isPrinted = files.ok && (await printPdfs(files.value));
    printing.value = false;
    if (!files.ok) said.value = '';
    else if (isPrinted) said.value = `${printedSentence(printed.value)} Given to the print window.`;
    else {
      await save();
      said.value = `This window cannot print. ${said.value}`;
    }
  }

  async function save(): Promise<void> {
    if (printed.value?.token == null) return;
    const { token, fileName } = printed.value;
    saving.value = await client.files.saveProduced(token, fileName, 'bundle');
    said.value = `${printedSentence(printed.value)} ${savingSentence(fileName, saving.value)}`;
  }

  return { printed, error, said, printing, saving, clear, print, save };
}

/** Sheets for several dogs: what is chosen, the printing under way, and what came of it. */
export function useBatch() {
  const client = useClient();
  const work = useWork();
  const { form, begin } = useChoice();
  const { saving, clear, ...handing } = useHandingOut(form);
  const { printed, error, said, print, save } = handing;

  /** Has the sheets made, and then printed or saved. */
  async function make(hand: () => Promise<void>): Promise<void> {
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
      if (answer.value.token === null) said.value = 'None of these sheets could be printed.';
      else await hand();
    } else if (answer.error.kind === 'cancelled') said.value = 'Stopped. Nothing was printed.';
    else error.value = answer.error;
  }

  return {
    form,
    work,
    ...handing,
    begin(dogs: readonly DogLine[], narrowed: boolean): void {
      clear();
      begin(dogs, narrowed);
    },
    makeAndPrint: () => make(print),
    makeAndSave: () => make(save),
    again: clear,
    /** True while there is an archive that is not yet in the practitioner's hands. */
    unsaved: computed(
      () =>
        printed.value?.token != null && (saving.value === null || canBeTriedAgain(saving.value)),
    ),
  };
}
